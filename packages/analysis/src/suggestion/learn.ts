import { type CauseName, causes, type PerCause, perCause } from './causes.ts';
import {
  baseRates,
  type CauseCounts,
  learnFinding,
  type Seen,
  type SeenByFinding,
  type SuggestionModel,
} from './model.ts';
import type { FindingPrior } from './priors.ts';
import type { Answers } from './suggest.ts';

/** A confirmed case: what was found, and the cause a person decided on. */
export interface ConfirmedCase {
  answers: Answers;
  cause: CauseName;
}

const emptySeen = (): Seen => ({ yes: perCause(() => 0), no: perCause(() => 0) });

/** Counts of answers per finding and cause. */
export function countAnswers(cases: Iterable<ConfirmedCase>): Map<string, Seen> {
  const seen = new Map<string, Seen>();
  for (const { answers, cause } of cases)
    for (const [code, answer] of answers) {
      if (answer === 'could_not_tell') continue;
      const row = seen.get(code) ?? emptySeen();
      row[answer][cause] += 1;
      seen.set(code, row);
    }
  return seen;
}

/** How often two findings of a group were answered alike or not, by cause: yes-yes, yes-no, no-yes, no-no. */
export type PairCounts = readonly {
  group: string;
  cause: CauseName;
  counts: readonly [number, number, number, number];
}[];

/** Before cases say otherwise, findings of a group are taken to share half of what they tell. */
const priorDependence = 0.5;
const dependenceStrength = 60;

/** Phi coefficient of a 2 × 2 table, or null where a margin is empty. */
export function phi([a, b, c, d]: readonly [number, number, number, number]): number | null {
  const margins = (a + b) * (c + d) * (a + c) * (b + d);
  return margins === 0 ? null : (a * d - b * c) / Math.sqrt(margins);
}

/** Mean absolute phi within causes, shrunk to the prior: how much findings of one group repeat each other. */
export function learnDependence(groups: readonly string[], pairs: PairCounts): Map<string, number> {
  return new Map(
    groups.map((group) => {
      let weight = dependenceStrength;
      let sum = dependenceStrength * priorDependence;
      for (const pair of pairs) {
        if (pair.group !== group) continue;
        const correlation = phi(pair.counts);
        const cases = pair.counts.reduce((all, count) => all + count, 0);
        if (correlation === null) continue;
        // the absolute value of a null correlation is about 0.8 / sqrt(n) by chance alone
        sum += cases * Math.max(0, Math.abs(correlation) - 0.8 / Math.sqrt(cases));
        weight += cases;
      }
      return [group, sum / weight];
    }),
  );
}

/** The group's pairs of findings answered in the same case, counted by cause. */
export function countPairs(findings: readonly FindingPrior[], cases: Iterable<ConfirmedCase>): PairCounts {
  const tables = new Map<string, { group: string; cause: CauseName; counts: [number, number, number, number] }>();
  const groupOf = new Map(findings.map(({ code, group }) => [code, group]));
  for (const { answers, cause } of cases) {
    const taken = [...answers]
      .filter(([code, answer]) => answer !== 'could_not_tell' && groupOf.has(code))
      .sort(([a], [b]) => (a < b ? -1 : 1));
    taken.forEach(([first, firstAnswer], place) => {
      for (const [second, secondAnswer] of taken.slice(place + 1)) {
        const group = groupOf.get(first)!;
        if (groupOf.get(second) !== group) continue;
        const key = `${first} ${second} ${cause}`;
        const table = tables.get(key) ?? { group, cause, counts: [0, 0, 0, 0] };
        table.counts[(firstAnswer === 'yes' ? 0 : 2) + (secondAnswer === 'yes' ? 0 : 1)]! += 1;
        tables.set(key, table);
      }
    });
  }
  return [...tables.values()];
}

export interface Learned {
  others: SeenByFinding;
  plant: SeenByFinding;
  base: CauseCounts;
  pairs: PairCounts;
  temperature: number;
}

export function buildModel(findings: readonly FindingPrior[], learned: Learned): SuggestionModel {
  const count = (counts: PerCause) => causes.reduce((sum, cause) => sum + counts[cause], 0);
  return {
    findings: new Map(
      findings.map((prior) => [
        prior.code,
        learnFinding(prior, learned.others.get(prior.code), learned.plant.get(prior.code)),
      ]),
    ),
    ...baseRates(learned.base),
    dependence: learnDependence([...new Set(findings.map(({ group }) => group))], learned.pairs),
    temperature: learned.temperature,
    cases: { group: count(learned.base.group), plant: count(learned.base.plant) },
  };
}

export function countCauses(cases: Iterable<ConfirmedCase>): PerCause {
  const counts = perCause(() => 0);
  for (const { cause } of cases) counts[cause] += 1;
  return counts;
}
