import { defaultConfidence, type Interval, type Reason } from '../estimate.ts';
import { betaCdf, betaQuantile, betaUpperTail } from '../numeric/beta-distribution.ts';
import type { ExactTest } from '../numeric/exact-test.ts';
import { requireConfidence } from '../numeric/require-count.ts';

/** Sum and sum of squares over independent reports, with what was produced (or, for equal terms, the days covered). */
export type SummedExposure = { sum: number; sumOfSquares: number; exposure: number | null };

export type SumRatio =
  | { value: number; interval: Interval; p: ExactTest; reason: null }
  | { value: null; interval: Interval; p: ExactTest; reason: 'not_finite' }
  | { value: null; interval: null; p: null; reason: Reason };

/**
 * Ratio of two rates of money or terminals, first over second, where each report counts with its own weight.
 *
 * A sum S with sum of squares Q varies like S²/Q reports of equal weight Q/S. These effective counts take the place of the
 * counts in the conditional interval of `rateRatio`; the p-values are the beta tails that belong to that interval (two-sided
 * = twice the smaller), so p < alpha exactly when the interval excludes 1. With equal weights the interval is that of
 * `rateRatio`; with unequal ones it is approximate, and too short when a few dear reports make up most of a sum.
 * Source: effective counts by matched moments as in Fay M.P. and Feuer E.J. (1997) Statistics in Medicine 16:791-801 (from
 * memory); tested by simulation.
 *
 * @returns `no_production` without an exposure, `no_reports` when both sums are 0, `not_finite` beside a net credit
 */
export function sumRatio(first: SummedExposure, second: SummedExposure, confidence = defaultConfidence): SumRatio {
  requireConfidence(confidence);
  const none = (reason: Reason): SumRatio => ({ value: null, interval: null, p: null, reason });
  if (!first.exposure || !second.exposure) return none('no_production');
  if (first.sum < 0 || second.sum < 0) return none('not_finite');
  if (first.sum === 0 && second.sum === 0) return none('no_reports');

  const weight = ({ sum, sumOfSquares }: SummedExposure): number | null => (sum > 0 ? sumOfSquares / sum : null);
  const firstWeight = weight(first) ?? weight(second)!;
  const secondWeight = weight(second) ?? firstWeight;
  const a = first.sum / firstWeight;
  const b = second.sum / secondWeight;
  const scale = firstWeight / first.exposure / (secondWeight / second.exposure);

  const tail = (1 - confidence) / 2;
  const odds = (share: number): number => (share / (1 - share)) * scale;
  const interval = {
    low: a === 0 ? 0 : odds(betaQuantile(tail, a, b + 1)),
    high: b === 0 ? null : odds(betaQuantile(1 - tail, a + 1, b)),
    confidence,
  };
  const equalShare = 1 / (1 + scale);
  const greater = a === 0 ? 1 : betaCdf(equalShare, a, b + 1);
  const less = b === 0 ? 1 : betaUpperTail(equalShare, a + 1, b);
  const p = { less, greater, twoSided: Math.min(1, 2 * Math.min(less, greater)) };
  if (b === 0) return { value: null, interval, p, reason: 'not_finite' };
  return { value: (a / b) * scale, interval, p, reason: null };
}
