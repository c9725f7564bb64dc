import { type ClosedInterval, defaultConfidence } from '../estimate.ts';
import { gammaQuantile } from '../numeric/gamma-distribution.ts';
import { requireConfidence, requireCount } from '../numeric/require-count.ts';

/**
 * Exact two-sided interval for a Poisson mean, from the count seen.
 *
 * low = gamma(alpha/2; k) or 0 when k = 0, high = gamma(1 - alpha/2; k + 1), alpha = 1 - confidence.
 * Source: Garwood F. (1936) Biometrika 28:437-442. With no failures the upper limit is 3.689 at 95 % two-sided
 * (2.996 is the one-sided limit, that is confidence 0.90 here).
 *
 * @param count failures seen, a whole number >= 0
 * @returns limits of the expected count, in failures
 * @throws RangeError when count or confidence is out of range
 */
export function poissonInterval(count: number, confidence = defaultConfidence): ClosedInterval {
  requireCount('count', count);
  requireConfidence(confidence);
  const tail = (1 - confidence) / 2;
  return {
    low: count === 0 ? 0 : gammaQuantile(tail, count),
    high: gammaQuantile(1 - tail, count + 1),
    confidence,
  };
}
