import type { GammaPart, ObservedExpected } from './gamma-mixture.ts';
import { logMarginal } from './shrunk-ratio.ts';

const golden = (Math.sqrt(5) - 1) / 2;

/** Largest value of a function with one peak between two limits, by golden section. */
function peak(f: (x: number) => number, from: number, to: number): { at: number; value: number } {
  let [low, high] = [from, to];
  let [left, right] = [high - golden * (high - low), low + golden * (high - low)];
  let [atLeft, atRight] = [f(left), f(right)];
  while (high - low > 1e-7) {
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

/** Beyond this shape the combinations differ so little from one another that the prior is as good as a point. */
const largestShape = 1e5;

/**
 * The gamma prior that fits many combinations best: how much their true ratios vary around the usual one.
 *
 * Maximum likelihood of the negative binomial counts over ln(mean) within ln(shape), golden section each: some 1600
 * passes over the combinations.
 * Source: the gamma-Poisson (negative binomial) model; Greenwood M. and Yule G.U. (1920) J. R. Statist. Soc. 83:255-279.
 *
 * @param combinations all of them, also those with no failure: leaving out zeros makes the usual ratio too high
 * @returns null when fewer than two combinations or no failures are there to learn from
 */
export function fitGammaPrior(combinations: readonly ObservedExpected[]): GammaPart | null {
  const observed = combinations.reduce((sum, one) => sum + one.observed, 0);
  const expected = combinations.reduce((sum, one) => sum + one.expected, 0);
  if (combinations.length < 2 || observed === 0) return null;
  const centre = Math.log(observed / expected);
  const likelihood = (shape: number, mean: number): number => {
    const part = { weight: 1, shape, rate: shape / mean };
    return combinations.reduce((sum, one) => sum + logMarginal(one, part), 0);
  };
  const bestMean = (logShape: number) =>
    peak((logMean) => likelihood(Math.exp(logShape), Math.exp(logMean)), centre - 5, centre + 5);
  const logShape = peak((candidate) => bestMean(candidate).value, Math.log(1e-3), Math.log(largestShape)).at;
  const shape = Math.exp(logShape);
  return { weight: 1, shape, rate: shape / Math.exp(bestMean(logShape).at) };
}
