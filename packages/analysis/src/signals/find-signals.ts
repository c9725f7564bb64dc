import { benjaminiHochberg } from '../comparisons/benjamini-hochberg.ts';
import type { Interval } from '../estimate.ts';
import { shrunkRatio } from '../shrinkage/shrunk-ratio.ts';
import { chanceOfSoMany, type UsualVariation, usualVariation } from './usual-variation.ts';

/** One value of a dimension (or of several together): what was seen, and what its exposure or usual share lets expect. */
export type Combination = { key: string; dimension: string; observed: number; expected: number };

export type Signal = Combination & {
  /** observed over expected, drawn towards what is usual in its dimension; posterior mean of the logarithm */
  ratio: number;
  interval: Interval;
  /** chance of so many or more, by counting and by how members of its dimension usually differ */
  p: number;
  /** p adjusted over all combinations looked at */
  adjustedP: number;
  /** failures beyond the expected ones that the lower limit of the ratio leaves; signals are ranked by it */
  excessAtLeast: number;
};

export type Signals = {
  /** highest excess first */
  signals: Signal[];
  /** beyond the `most` asked for, of less excess */
  more: number;
  /** combinations that were tested, zeros included */
  tested: number;
  /** combinations that could not be, because nothing was expected of them */
  withoutExpectation: number;
};

/**
 * Combinations with more failures than their exposure (or share) explains, and than members of their kind usually differ by.
 *
 * p = P(X >= observed), X ~ negative binomial: Poisson(ratio × expected) with the ratio varying as among ordinary members of the
 * dimension (`usualVariation`); Poisson(expected) where a dimension has fewer than five members. Adjusted over all combinations
 * of all dimensions, so that on average at most `falseDiscoveryRate` of the signals are none. What is shown is the shrunk
 * ratio (`shrunkRatio`), and the order follows its lower limit: a large ratio on few failures does not lead the list.
 * Sources: Benjamini Y. and Hochberg Y. (1995); DuMouchel W. (1999) The American Statistician 53:177-190.
 *
 * @param combinations all that were looked at, those without failures too; expected from the same period and scope
 * @param options `confidence` of the shrunk interval, 0.9 unless given (limits EB05 and EB95); `most`: how many to work out,
 *   those of the largest plain excess
 */
export function findSignals(
  combinations: readonly Combination[],
  options: { falseDiscoveryRate?: number; confidence?: number; most?: number } = {},
): Signals {
  const { falseDiscoveryRate = 0.1, confidence = 0.9, most = Number.POSITIVE_INFINITY } = options;
  const tested = combinations.filter(({ expected }) => expected > 0);
  const variation = new Map<string, UsualVariation>();
  for (const [dimension, members] of Map.groupBy(tested, (one) => one.dimension))
    variation.set(dimension, usualVariation(members));
  const pValues = tested.map((one) => chanceOfSoMany(one, variation.get(one.dimension)!.usual));
  const adjusted = benjaminiHochberg(pValues);
  const beyond = tested
    .map((one, place) => ({ ...one, p: pValues[place]!, adjustedP: adjusted[place]! }))
    .filter(({ adjustedP }) => adjustedP <= falseDiscoveryRate)
    .sort((a, b) => b.observed - b.expected - (a.observed - a.expected));
  const signals = beyond.slice(0, most).map((one): Signal => {
    const { geometricMean, interval } = shrunkRatio(one, variation.get(one.dimension)!.parts, confidence);
    return {
      ...one,
      ratio: geometricMean,
      interval,
      excessAtLeast: one.expected * Math.max(0, interval.low - 1),
    };
  });
  signals.sort((a, b) => b.excessAtLeast - a.excessAtLeast || a.p - b.p || (a.key < b.key ? -1 : 1));
  return {
    signals,
    more: beyond.length - signals.length,
    tested: tested.length,
    withoutExpectation: combinations.length - tested.length,
  };
}
