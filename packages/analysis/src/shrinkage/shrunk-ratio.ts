import { defaultConfidence, type Interval } from '../estimate.ts';
import { digamma } from '../numeric/digamma.ts';
import { gammaCdf, logGamma } from '../numeric/gamma-distribution.ts';
import { requireConfidence, requireCount } from '../numeric/require-count.ts';
import type { GammaPart, ObservedExpected } from './gamma-mixture.ts';

export type ShrunkRatio = {
  /** geometric mean of the posterior: exp(E[ln ratio]) */
  geometricMean: number;
  interval: Interval;
  posterior: GammaPart[];
};

/** log of the negative binomial mass of `observed` when the ratio ~ Gamma(shape, rate). */
function logMarginal({ observed, expected }: ObservedExpected, { shape, rate }: GammaPart): number {
  const share = expected / (rate + expected);
  return (
    logGamma(shape + observed) -
    logGamma(shape) -
    logGamma(observed + 1) +
    shape * Math.log1p(-share) +
    observed * Math.log(share)
  );
}

/**
 * Observed over expected, drawn towards what is usual for such combinations: much with little data, hardly with a lot.
 *
 * Each part of the prior becomes Gamma(shape + observed, rate + expected), with a weight in proportion to its weight before
 * × its negative binomial mass. Source: DuMouchel W. (1999) The American Statistician 53:177-190.
 *
 * @param prior parts whose weights add up to 1; one part is the plain gamma-Poisson model
 * @param confidence equal-tailed interval of the posterior; 0.9 gives DuMouchel's EB05 and EB95
 */
export function shrunkRatio(
  counts: ObservedExpected,
  prior: readonly GammaPart[],
  confidence = defaultConfidence,
): ShrunkRatio {
  requireCount('observed', counts.observed);
  requireConfidence(confidence);
  if (!(counts.expected > 0)) throw new RangeError(`expected must be above 0, not ${counts.expected}.`);
  const logs = prior.map((part) => Math.log(part.weight) + logMarginal(counts, part));
  const largest = Math.max(...logs);
  const total = logs.reduce((sum, log) => sum + Math.exp(log - largest), 0);
  const posterior = prior.map(({ shape, rate }, place) => ({
    weight: Math.exp(logs[place]! - largest) / total,
    shape: shape + counts.observed,
    rate: rate + counts.expected,
  }));
  const meanLog = posterior.reduce(
    (sum, { weight, shape, rate }) => sum + weight * (digamma(shape) - Math.log(rate)),
    0,
  );
  const tail = (1 - confidence) / 2;
  const interval = { low: quantile(posterior, tail), high: quantile(posterior, 1 - tail), confidence };
  return { geometricMean: Math.exp(meanLog), interval, posterior };
}

/** Quantile of a mixture of gammas, by bisection on its logarithm. */
function quantile(parts: readonly GammaPart[], probability: number): number {
  const below = (x: number): number =>
    parts.reduce((sum, { weight, shape, rate }) => sum + weight * gammaCdf(x * rate, shape), 0);
  let [low, high] = [-200, 50];
  for (let round = 0; round < 80; round++) {
    const middle = (low + high) / 2;
    if (below(Math.exp(middle)) < probability) low = middle;
    else high = middle;
  }
  return Math.exp((low + high) / 2);
}
