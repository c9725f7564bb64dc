import { type ClosedInterval, defaultConfidence } from '../estimate.ts';
import { betaQuantile } from '../numeric/beta-distribution.ts';
import { requireConfidence, requireCount } from '../numeric/require-count.ts';

/**
 * Exact two-sided interval for a proportion.
 *
 * low = beta(alpha/2; x, n - x + 1) or 0 when x = 0, high = beta(1 - alpha/2; x + 1, n - x) or 1 when x = n.
 * Source: Clopper C.J. and Pearson E.S. (1934) Biometrika 26:404-413. Its coverage is never below the confidence.
 *
 * @param events x, a whole number 0 <= x <= n
 * @param trials n, a whole number; with n = 0 nothing is known and the interval is 0 to 1
 * @throws RangeError when an argument is out of range
 */
export function binomialInterval(events: number, trials: number, confidence = defaultConfidence): ClosedInterval {
  requireCount('events', events);
  requireCount('trials', trials);
  requireConfidence(confidence);
  if (events > trials) throw new RangeError(`events (${events}) must not exceed trials (${trials}).`);
  const tail = (1 - confidence) / 2;
  return {
    low: events === 0 ? 0 : betaQuantile(tail, events, trials - events + 1),
    high: events === trials ? 1 : betaQuantile(1 - tail, events + 1, trials - events),
    confidence,
  };
}
