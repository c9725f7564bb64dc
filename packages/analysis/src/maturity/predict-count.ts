import { type Estimate, estimate } from '../estimate.ts';
import { betaCdf } from '../numeric/beta-distribution.ts';

/**
 * How many failures a coming exposure will show, after so many over a past one.
 *
 * The rate has the posterior Gamma(k + 1/2, T) (Jeffreys prior), the coming count over U is then negative binomial with
 * P(X <= x) = I(T / (T + U); k + 1/2, x + 1); the interval holds its alpha/2 quantiles. Value = k U / T.
 * Source: Gelman A. et al. (2013) Bayesian Data Analysis, section 2.6 (from memory); checked with scipy.
 *
 * @param coming exposure still to be seen, 0 or more
 */
export function predictCount(
  past: { failures: number; exposure: number },
  coming: number,
  confidence: number,
): Estimate {
  const value = (past.failures * coming) / past.exposure;
  if (coming <= 0) return estimate(0, { low: 0, high: 0, confidence });
  const share = past.exposure / (past.exposure + coming);
  const atMost = (count: number): number => betaCdf(share, past.failures + 0.5, count + 1);
  const quantile = (probability: number): number => {
    let [low, high] = [-1, 1];
    while (atMost(high) < probability) [low, high] = [high, high * 2];
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (atMost(middle) >= probability) high = middle;
      else low = middle;
    }
    return high;
  };
  const tail = (1 - confidence) / 2;
  return estimate(value, { low: quantile(tail), high: quantile(1 - tail), confidence });
}
