import { addDays, type Day, daysBetween } from '#analysis/calendar/day.ts';
import { weekStart } from '#analysis/calendar/week.ts';
import { type ExplainedSignal, explainSignals } from '#analysis/signals/explain-signals.ts';
import { findSignals } from '#analysis/signals/find-signals.ts';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import { type MadeOn, madeBy, madeOn } from '#api/features/analyses/exposure.service.ts';
import type { Candidate } from './candidate.ts';
import { combinationsOf } from './combinations.ts';
import { countSets } from './counts.queries.ts';
import { type Master, readMaster } from './master.queries.ts';
import { type Matched, matchedByWeek } from './matched.queries.ts';
import { overlapsOf } from './overlaps.ts';
import { countTools } from './tools.queries.ts';

export const falseDiscoveryRate = 0.1;
/** Worked out: of the largest plain excess. */
const candidatesWorkedOut = 40;
const fewestWeeksBack = 13;

export interface FoundSignal extends ExplainedSignal, Omit<Candidate, 'key' | 'dimension' | 'observed' | 'expected'> {}

export interface Search {
  /** strongest excess first; those explained by another among them */
  found: FoundSignal[];
  tested: number;
  withoutExpectation: number;
  more: number;
  reports: number;
  master: Master;
  lookedBack: Day;
  matched: Matched[];
  /** reports of the period in both of two signals, by their keys */
  shared: (key: string, other: string) => number;
  production: MadeOn[];
}

/** How strongly the counts speak against what was expected: log likelihood ratio, as in scan statistics (Kulldorff M. 1997). */
const evidence = ({ observed, expected }: FoundSignal) =>
  observed * Math.log(observed / expected) - observed + expected;

/** Looks for what fails more than it should, tells echoes from origins, and counts both by week. */
export async function searchSignals(asked: Asked): Promise<Search> {
  const { period, own } = asked;
  const [counted, tools, byHousing, byTerminal, master] = await Promise.all([
    countSets(asked),
    countTools(asked),
    madeBy(asked, period, 'housing'),
    madeBy(asked, period, 'terminal'),
    readMaster(asked),
  ]);
  const plants = asked.plants.map(({ id }) => id);
  const candidates = combinationsOf({ counted, tools, byHousing, byTerminal, master, plants });
  const { signals, tested, withoutExpectation, more } = findSignals(candidates, {
    falseDiscoveryRate,
    most: candidatesWorkedOut,
  });
  const byKey = new Map(candidates.map((candidate) => [candidate.key, candidate]));
  const found = signals.map((signal): FoundSignal => ({ ...byKey.get(signal.key)!, ...signal, explainedBy: null }));
  const back = Math.max(daysBetween(period.from, period.to), 7 * fewestWeeksBack);
  const lookedBack = weekStart(addDays(period.from, -back), own.firstWeekday);
  const [matched, production] = found.length
    ? await Promise.all([
        matchedByWeek(
          asked,
          found.map(({ member }) => member),
          lookedBack,
        ),
        madeOn(asked, { from: lookedBack, to: period.to }),
      ])
    : [[], []];
  const places = new Map(found.map(({ key }, place) => [key, place]));
  const overlap = overlapsOf(
    found.map(({ member }) => member),
    matched,
  );
  const shared: Search['shared'] = (key, other) => overlap(places.get(key)!, places.get(other)!);
  return {
    found: explain(found, shared),
    shared,
    tested,
    withoutExpectation,
    more,
    reports: counted.plant.reduce((sum, { reports }) => sum + reports, 0),
    master,
    lookedBack,
    matched,
    production,
  };
}

/** The most telling first, so that what is narrow explains what is wide; of the shared, as much was expected as of the stronger's own. */
function explain(found: readonly FoundSignal[], shared: Search['shared']): FoundSignal[] {
  const ranked = found.toSorted((a, b) => evidence(b) - evidence(a));
  const byKey = new Map(found.map((signal) => [signal.key, signal]));
  const explained = explainSignals(ranked, (key, otherKey) => {
    const [weaker, stronger] = [byKey.get(key)!, byKey.get(otherKey)!];
    const observed = shared(key, otherKey);
    const expected = Math.min(weaker.expected, (stronger.expected * observed) / stronger.observed);
    return { observed, expected };
  });
  const origin = new Map(explained.map(({ key, explainedBy }) => [key, explainedBy]));
  return found.map((signal) => ({ ...signal, explainedBy: origin.get(signal.key) ?? null }));
}
