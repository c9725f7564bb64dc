import { type ChainLadder, chainLadder } from '#analysis/maturity/chain-ladder.ts';
import { maturityByAge } from '#analysis/maturity/maturity-by-age.ts';
import type { Triangle } from '#analysis/maturity/triangle.ts';

/** A pattern of delay on fewer reports would be a guess. */
const fewest = 20;

export interface Pattern {
  ladder: ChainLadder;
  reports: number;
  /** share of the final count that is reported by each age in months; null when too few reports say so */
  byAge: number[] | null;
}

/** How failures come in with age. An age by which nothing was ever reported has a share of 0. */
export function patternOf({ rows }: Triangle): Pattern {
  const ladder = chainLadder(rows.map(({ cumulative }) => cumulative));
  const reports = rows.reduce((sum, { cumulative }) => sum + cumulative.at(-1)!, 0);
  const byAge = reports < fewest ? null : maturityByAge(ladder.steps).map((share) => share ?? 0);
  return { ladder, reports, byAge };
}

export const reportedAt = (byAge: readonly number[], age: number): number => (age < 0 ? 0 : (byAge[age] ?? 1));
