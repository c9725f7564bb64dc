import { logGamma } from '../numeric/gamma-distribution.ts';
import type { GammaPart, ObservedExpected } from './gamma-mixture.ts';

const golden = (Math.sqrt(5) - 1) / 2;

/** Largest value of a function with one peak between two limits, by golden section. */
function peak(f: (x: number) => number, from: number, to: number): { at: number; value: number } {
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
  return { at: (low + high) / 2, value: Math.max(atLeft, atRight) };
}

const smallestShape = 1e-3;
/** Beyond this shape the combinations differ so little from one another that the prior is as good as a point. */
const largestShape = 1e5;

/**
 * The gamma prior that fits many combinations best: how much their true ratios vary around the usual one.
 *
 * Maximum likelihood of the negative binomial counts over ln(rate) within ln(shape), golden section each.
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
  const usual = Math.log(expected / observed);
  const bestRate = (logShape: number) =>
    peak((logRate) => ofRate(Math.exp(logShape), Math.exp(logRate)), logShape + usual - 5, logShape + usual + 5);
  const logShape = peak(
    (candidate) => ofShape(Math.exp(candidate)) + bestRate(candidate).value,
    Math.log(smallestShape),
    Math.log(largestShape),
  ).at;
  return { weight: 1, shape: Math.exp(logShape), rate: Math.exp(bestRate(logShape).at) };
}
