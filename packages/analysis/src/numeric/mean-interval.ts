import { defaultConfidence, type Estimate, estimate, notComputable } from '../estimate.ts';
import { betaQuantile } from './beta-distribution.ts';
import { requireConfidence } from './require-count.ts';

/** The t that holds the confidence between -t and t: t² / (t² + degrees of freedom) ~ Beta(1/2, freedom/2). */
function studentQuantile(confidence: number, freedom: number): number {
  const share = betaQuantile(confidence, 0.5, freedom / 2);
  return Math.sqrt((freedom * share) / (1 - share));
}

/**
 * Mean of independent values with Student's t interval: mean ± t(1 - alpha/2; n - 1) × s / sqrt(n).
 * Source: Student (1908) Biometrika 6:1-25. Good from some thirty values on, fewer only if they are near normal.
 *
 * @returns `no_reports` without values, `too_few` with one
 */
export function meanInterval(values: readonly number[], confidence = defaultConfidence): Estimate {
  requireConfidence(confidence);
  const n = values.length;
  if (n === 0) return notComputable('no_reports');
  if (n === 1) return notComputable('too_few');
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const half = studentQuantile(confidence, n - 1) * Math.sqrt(squares / (n - 1) / n);
  return estimate(mean, { low: mean - half, high: mean + half, confidence });
}
