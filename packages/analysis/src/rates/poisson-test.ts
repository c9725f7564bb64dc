import { defaultConfidence, type Estimate } from '../estimate.ts';
import { type DiscreteDistribution, type ExactTest, exactTest } from '../numeric/exact-test.ts';
import { logGamma } from '../numeric/gamma-distribution.ts';
import { failureRate } from './failure-rate.ts';

const poisson = (mean: number): DiscreteDistribution => ({
  low: 0,
  high: Number.POSITIVE_INFINITY,
  mode: Math.floor(mean),
  logMass: (count) => count * Math.log(mean) - mean - logGamma(count + 1),
  ratio: (count) => mean / (count + 1),
});

/**
 * Exact one-sample test: does a count agree with a given rate?
 *
 * Under the rate, count ~ Poisson(rate × exposure); the two-sided p-value is the minimum-likelihood one (see `exactTest`).
 * Source: R `poisson.test`, one-sample form (references `2-poisson-test-r1`).
 *
 * @param rate the rate tested, in failures per unit of exposure, > 0
 * @returns the rate seen with its Garwood interval, and the p-values; p is null when the exposure is missing
 */
export function poissonTest(input: { count: number; exposure: number | null; rate: number; confidence?: number }): {
  rate: Estimate;
  p: ExactTest | null;
} {
  const { count, exposure, rate: tested, confidence = defaultConfidence } = input;
  if (!(tested > 0)) throw new RangeError(`rate must be above 0, not ${tested}.`);
  const rate = failureRate({ failures: count, exposure, per: 1, confidence });
  return { rate, p: exposure ? exactTest(poisson(tested * exposure), count) : null };
}
