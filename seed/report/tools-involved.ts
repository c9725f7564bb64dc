import type { DayNumber } from '../calendar.ts';
import type { Dice } from '../random.ts';
import type { Fault } from '../scenario/fault.ts';
import { applicatorAt } from '../scenario/worn-applicator.ts';
import type { Finding } from './detection.ts';

export interface ToolsInvolved {
  /** codes at the plant; the first is the one counted */
  codes: string[];
  fixturePosition: string | null;
}

const anyPosition = (dice: Dice) => `${dice.pick(['A', 'B', 'C', 'D'])}${dice.whole(1, 6)}`;

/** The tools that a report names: what a planted fault has in common, else what people note for its cause and stage. */
export function toolsInvolved(fault: Fault, { found }: Finding, anchor: DayNumber, dice: Dice): ToolsInvolved {
  const applicator = applicatorAt(fault.run, anchor);
  const { fixture } = fault.run.program;
  if (fault.tool && dice.chance(0.92))
    return { codes: [fault.tool], fixturePosition: dice.chance(0.95) ? (fault.fixturePosition ?? null) : null };
  if (fault.cause === 'probe_damage' && dice.chance(0.75))
    return { codes: [fixture], fixturePosition: dice.chance(0.8) ? anyPosition(dice) : null };
  const codes = dice.chance(fault.cause === 'tooling' ? 0.75 : 0.22) ? [applicator] : [];
  const tested = (found === 6 || found === 8) && dice.chance(0.3);
  if (tested) codes.push(fixture);
  return { codes, fixturePosition: tested && dice.chance(0.6) ? anyPosition(dice) : null };
}
