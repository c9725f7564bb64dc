import type { Sorted } from '../report/sorting.ts';
import type { Filed } from '../tables/reports.ts';
import type { World } from '../world.ts';
import { isCause, trueFindings } from './other-world.ts';
import { type Taken, takenOn } from './taken.ts';

/** A report on which somebody took findings, and the decision on it where there is one. */
export interface Case {
  filed: Filed;
  taken: Taken[];
  decision: Sorted | null;
}

/** Findings on about one sorted report in twelve, and on some of those that still wait. */
export function drawCases(world: World, filed: readonly Filed[]): Case[] {
  const dice = world.dice('evidence');
  const findings = trueFindings(world.dice('other world'));
  return filed.flatMap((it): Case[] => {
    const decision = it.report.sortings.at(-1) ?? null;
    if (decision && !isCause(decision.cause)) return [];
    if (!dice.chance(decision ? 0.08 : 0.4)) return [];
    const taken = takenOn(it, findings, decision ? dice.whole(5, 10) : dice.whole(2, 4), dice);
    return taken.length > 0 ? [{ filed: it, taken, decision }] : [];
  });
}
