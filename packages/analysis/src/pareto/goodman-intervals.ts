import { type ClosedInterval, defaultConfidence } from '../estimate.ts';
import { chiSquareQuantile } from '../numeric/gamma-distribution.ts';
import { requireConfidence, requireCount } from '../numeric/require-count.ts';

/**
 * Simultaneous intervals for the shares of a multinomial: all of them hold together with at least about the confidence.
 *
 * Score limits at A = chi-square(1 - alpha/k; 1): (A + 2x ± sqrt(A (A + 4x (n - x) / n))) / (2 (n + A)).
 * Source: Goodman L.A. (1965) Technometrics 7:247-254. For independent reports; terminals of one report and money are not
 * independent, use `bootstrapRanking` there.
 *
 * @param counts reports per bar, all bars of the total, shown or not
 * @returns one interval per bar, as fractions; empty when there are no reports
 */
export function goodmanIntervals(counts: readonly number[], confidence = defaultConfidence): ClosedInterval[] {
  requireConfidence(confidence);
  for (const count of counts) requireCount('count', count);
  const n = counts.reduce((sum, count) => sum + count, 0);
  if (n === 0) return [];
  const a = chiSquareQuantile(1 - (1 - confidence) / counts.length, 1);
  return counts.map((x) => {
    const half = Math.sqrt(a * (a + (4 * x * (n - x)) / n));
    const low = Math.max(0, (a + 2 * x - half) / (2 * (n + a)));
    return { low: x === 0 ? 0 : low, high: Math.min(1, (a + 2 * x + half) / (2 * (n + a))), confidence };
  });
}
