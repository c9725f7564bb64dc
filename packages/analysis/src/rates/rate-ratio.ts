import { defaultConfidence, type Interval, type Reason } from '../estimate.ts';
import { binomial } from '../numeric/binomial-distribution.ts';
import { type ExactTest, exactTest } from '../numeric/exact-test.ts';
import { requireCount } from '../numeric/require-count.ts';
import { binomialInterval } from './binomial-interval.ts';

export type CountedExposure = { failures: number; exposure: number | null };

/**
 * The ratio of two rates. With no failure in the second the ratio has no value (`not_finite`) but still an interval
 * without upper limit and a p-value.
 */
export type RateRatio =
  | { value: number; interval: Interval; p: ExactTest; reason: null }
  | { value: null; interval: Interval; p: ExactTest; reason: 'not_finite' }
  | { value: null; interval: null; p: null; reason: Reason };

/**
 * Ratio of two Poisson rates, first over second, with the exact conditional test and interval.
 *
 * Given n = x1 + x2, x1 ~ Binomial(n, T1 / (T1 + T2)) when the rates are equal; the interval is the Clopper-Pearson
 * interval of x1 in n mapped by p -> p / (1 - p) × T2 / T1. `p.less` speaks for a lower first rate, `p.greater` for a higher.
 * Sources: Przyborowski J. and Wilenski H. (1940) Biometrika 31:313-323; Fay M.P. (2010) The R Journal 2(1):53-58;
 * R `poisson.test`. The two-sided p-value (minimum likelihood) and the interval (equal tails) are those of R: near the
 * limit of significance one may exclude 1 while the other does not.
 *
 * @param first failures and exposure, for example this period
 * @param second failures and exposure in the same unit, for example the period before
 * @returns `no_production` without an exposure, `no_reports` when neither side has a failure
 */
export function rateRatio(first: CountedExposure, second: CountedExposure, confidence = defaultConfidence): RateRatio {
  requireCount('failures', first.failures);
  requireCount('failures', second.failures);
  const none = (reason: Reason): RateRatio => ({ value: null, interval: null, p: null, reason });
  if (!first.exposure || !second.exposure) return none('no_production');
  const failures = first.failures + second.failures;
  if (failures === 0) return none('no_reports');

  const p = exactTest(binomial(failures, first.exposure / (first.exposure + second.exposure)), first.failures);
  const scale = second.exposure / first.exposure;
  const { low, high } = binomialInterval(first.failures, failures, confidence);
  const interval = {
    low: (low / (1 - low)) * scale,
    high: high === 1 ? null : (high / (1 - high)) * scale,
    confidence,
  };
  if (second.failures === 0) return { value: null, interval, p, reason: 'not_finite' };
  return { value: (first.failures / second.failures) * scale, interval, p, reason: null };
}
