import { seededRandom } from '../numeric/random.ts';
import { requireCount } from '../numeric/require-count.ts';
import { gammaVariate } from '../numeric/variates.ts';
import type { CountedExposure } from '../rates/rate-ratio.ts';
import { topProbabilitiesOf } from './top-k.ts';

/**
 * Probability that each bar belongs to the top k by rate: rates ~ Gamma(failures + 1/2) / exposure (Jeffreys prior of a
 * Poisson rate), and the fraction of draws in which the bar is among the k largest. A bar with little production is uncertain
 * and so seldom sure of its place, however high its rate looks.
 *
 * @param bars reports and exposure per bar, all in one unit
 * @returns one probability per bar, in the order given; null for a bar without exposure, which is not ranked
 */
export function topRateProbabilities(
  bars: readonly CountedExposure[],
  options: { k: number; seed: number; draws?: number },
): (number | null)[] {
  const { k, seed, draws = 4000 } = options;
  for (const bar of bars) requireCount('failures', bar.failures);
  const ranked = bars.flatMap(({ failures, exposure }) => (exposure ? [{ shape: failures + 0.5, exposure }] : []));
  const moments = ranked.map(({ shape, exposure }) => ({
    mean: shape / exposure,
    deviation: Math.sqrt(shape) / exposure,
  }));
  const random = seededRandom(seed);
  const variate = (place: number): number => gammaVariate(ranked[place]!.shape, random) / ranked[place]!.exposure;
  const probabilities = topProbabilitiesOf(moments, k, draws, variate);
  let next = 0;
  return bars.map((bar) => (bar.exposure ? probabilities[next++]! : null));
}
