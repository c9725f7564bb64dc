import { benjaminiHochberg } from '../comparisons/benjamini-hochberg.ts';
import type { Interval } from '../estimate.ts';
import { gammaCdf } from '../numeric/gamma-distribution.ts';
import { fitGammaPrior } from '../shrinkage/fit-gamma-prior.ts';
import type { GammaPart } from '../shrinkage/gamma-mixture.ts';
import { shrunkRatio } from '../shrinkage/shrunk-ratio.ts';

/** One value of a dimension (or of several together): what was seen, and what its exposure or usual share lets expect. */
export type Combination = { key: string; dimension: string; observed: number; expected: number };

export type Signal = Combination & {
  /** observed over expected, drawn towards what is usual in its dimension; posterior mean of the logarithm */
  ratio: number;
  interval: Interval;
  /** chance of so many or more by counting alone */
  p: number;
  /** p adjusted over all combinations looked at */
  adjustedP: number;
  /** failures beyond the expected ones that the lower limit of the ratio leaves; signals are ranked by it */
  excessAtLeast: number;
};

export type Signals = {
  /** highest excess first */
  signals: Signal[];
  /** combinations that were tested, zeros included */
  tested: number;
  /** combinations that could not be, because nothing was expected of them */
  withoutExpectation: number;
};

/** Where a dimension is too small to learn how much its members vary. */
const vague: GammaPart = { weight: 1, shape: 1, rate: 1 };

/**
 * Combinations with more failures than their exposure (or share) explains.
 *
 * p = P(X >= observed), X ~ Poisson(expected); adjusted over all combinations of all dimensions, so that on average at most
 * `falseDiscoveryRate` of the signals are none. What is shown is the shrunk ratio (`shrunkRatio`, prior fitted per
 * dimension), and the order follows its lower limit: a large ratio on few failures does not lead the list.
 * Sources: Benjamini Y. and Hochberg Y. (1995); DuMouchel W. (1999) The American Statistician 53:177-190.
 *
 * @param combinations all that were looked at, those without failures too; expected from the same period and scope
 * @param options `confidence` of the shrunk interval, 0.9 unless given (limits EB05 and EB95)
 */
export function findSignals(
  combinations: readonly Combination[],
  options: { falseDiscoveryRate?: number; confidence?: number } = {},
): Signals {
  const { falseDiscoveryRate = 0.1, confidence = 0.9 } = options;
  const tested = combinations.filter(({ expected }) => expected > 0);
  const pValues = tested.map(({ observed, expected }) => (observed === 0 ? 1 : gammaCdf(expected, observed)));
  const adjusted = benjaminiHochberg(pValues);
  const priors = new Map<string, GammaPart>();
  const priorOf = (dimension: string): GammaPart => {
    const known = priors.get(dimension);
    if (known) return known;
    const prior = fitGammaPrior(tested.filter((one) => one.dimension === dimension)) ?? vague;
    priors.set(dimension, prior);
    return prior;
  };
  const signals = tested.flatMap((combination, place): Signal[] => {
    if (adjusted[place]! > falseDiscoveryRate) return [];
    const { geometricMean, interval } = shrunkRatio(combination, [priorOf(combination.dimension)], confidence);
    return [
      {
        ...combination,
        ratio: geometricMean,
        interval,
        p: pValues[place]!,
        adjustedP: adjusted[place]!,
        excessAtLeast: combination.expected * Math.max(0, interval.low - 1),
      },
    ];
  });
  signals.sort((a, b) => b.excessAtLeast - a.excessAtLeast || a.p - b.p || (a.key < b.key ? -1 : 1));
  return { signals, tested: tested.length, withoutExpectation: combinations.length - tested.length };
}
