import { type ClosedInterval, defaultConfidence } from '../estimate.ts';
import { gammaQuantile } from '../numeric/gamma-distribution.ts';
import { normalQuantile } from '../numeric/normal-distribution.ts';
import { requireConfidence } from '../numeric/require-count.ts';

/** Over independent reports: the sum of what each holds (terminals, minor units), the sum of its squares, the largest. */
export type WeightedSum = { sum: number; sumOfSquares: number; largest: number };

/**
 * Two-sided interval for the mean of a sum in which each report counts with its own weight: terminals of several terminals
 * reported together are not independent, reports are.
 *
 * low = gamma quantile (alpha/2) with mean S and variance Q; high = gamma quantile (1 - alpha/2) with mean S + w and
 * variance Q + w², w the largest weight. With all weights 1 these are Garwood's limits.
 * Source: Fay M.P. and Feuer E.J. (1997) Statistics in Medicine 16:791-801, formulas (6) and (7) (from memory); tested
 * by simulation. A sum that is a net credit gets normal limits with the same variance.
 *
 * @param total sums in one unit; with nothing reported, `largest` is taken as 1
 */
export function weightedPoissonInterval(total: WeightedSum, confidence = defaultConfidence): ClosedInterval {
  requireConfidence(confidence);
  const { sum, sumOfSquares } = total;
  const tail = (1 - confidence) / 2;
  if (sum < 0) {
    const half = -normalQuantile(tail) * Math.sqrt(sumOfSquares);
    return { low: sum - half, high: sum + half, confidence };
  }
  const largest = total.largest > 0 ? total.largest : 1;
  return {
    low: sum === 0 ? 0 : gammaLimit(tail, sum, sumOfSquares),
    high: gammaLimit(1 - tail, sum + largest, sumOfSquares + largest * largest),
    confidence,
  };
}

const gammaLimit = (probability: number, mean: number, variance: number): number =>
  (variance / mean) * gammaQuantile(probability, (mean * mean) / variance);
