import { logGamma } from '../numeric/gamma-distribution.ts';
import type { GammaPart, ObservedExpected } from './gamma-mixture.ts';

const golden = (Math.sqrt(5) - 1) / 2;

/** Where a function with one peak between two limits is largest, by golden section. */
function peak(f: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  let [left, right] = [high - golden * (high - low), low + golden * (high - low)];
  let [atLeft, atRight] = [f(left), f(right)];
  while (high - low > 1e-6) {
    if (atLeft > atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - golden * (high - low);
      atLeft = f(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + golden * (high - low);
      atRight = f(right);
    }
  }
  return (low + high) / 2;
}

const smallestShape = 1e-3;
/** Beyond this shape the combinations differ so little from one another that the prior is as good as a point. */
const largestShape = 1e5;

/**
 * The gamma prior that fits many combinations best: how much their true ratios vary around the usual one.
 *
 * Maximum likelihood of the negative binomial counts: over ln(shape) by golden section, and for each shape over ln(rate) by
 * Newton's method, whose equation has one root.
 * Source: the gamma-Poisson (negative binomial) model; Greenwood M. and Yule G.U. (1920) J. R. Statist. Soc. 83:255-279.
 *
 * @param combinations all of them, also those with no failure: leaving out zeros makes the usual ratio too high
 * @returns null when fewer than two combinations or no failures are there to learn from
 */
export function fitGammaPrior(combinations: readonly ObservedExpected[]): GammaPart | null {
  const observed = combinations.reduce((sum, one) => sum + one.observed, 0);
  const expected = combinations.reduce((sum, one) => sum + one.expected, 0);
  if (combinations.length < 2 || observed === 0) return null;

  const frequency = new Map<number, number>();
  for (const one of combinations) frequency.set(one.observed, (frequency.get(one.observed) ?? 0) + 1);
  /** the part of the log likelihood that the rate does not change, up to a constant */
  const ofShape = (shape: number): number => {
    let sum = -combinations.length * logGamma(shape);
    for (const [count, times] of frequency) sum += times * logGamma(shape + count);
    return sum;
  };
  const ofRate = (shape: number, rate: number): number => {
    let sum = combinations.length * shape * Math.log(rate);
    for (const one of combinations) sum -= (shape + one.observed) * Math.log(rate + one.expected);
    return sum;
  };
  /** ln of the rate for which Σ (shape + x) rate / (rate + expected) = n shape, from a start near it. */
  const bestRate = (shape: number, start: number): number => {
    let logRate = start;
    for (let round = 0; round < 60; round++) {
      const rate = Math.exp(logRate);
      let [excess, slope] = [-combinations.length * shape, 0];
      for (const one of combinations) {
        const part = ((shape + one.observed) * rate) / (rate + one.expected);
        excess += part;
        slope += (part * one.expected) / (rate + one.expected);
      }
      const step = Math.max(-1, Math.min(1, excess / slope));
      logRate -= step;
      if (Math.abs(step) < 1e-9) break;
    }
    return logRate;
  };
  const usual = Math.log(expected / observed);
  let lead = 0;
  const rateFor = (logShape: number): number => {
    const logRate = bestRate(Math.exp(logShape), logShape + usual + lead);
    lead = logRate - logShape - usual;
    return logRate;
  };
  const logShape = peak(
    (candidate) => ofShape(Math.exp(candidate)) + ofRate(Math.exp(candidate), Math.exp(rateFor(candidate))),
    Math.log(smallestShape),
    Math.log(largestShape),
  );
  return { weight: 1, shape: Math.exp(logShape), rate: Math.exp(rateFor(logShape)) };
}
