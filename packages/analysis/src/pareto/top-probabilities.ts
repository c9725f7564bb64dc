import { seededRandom } from '../numeric/random.ts';
import { requireCount } from '../numeric/require-count.ts';
import { gammaVariate } from '../numeric/variates.ts';
import { topProbabilitiesOf } from './top-k.ts';

/**
 * Probability that each bar truly belongs to the top k, given the counts of reports seen.
 *
 * Shares ~ Dirichlet(count + prior), drawn as independent gamma variates (their order needs no normalising); the
 * probability is the fraction of draws in which the bar is among the k largest, with a Monte Carlo standard error of at
 * most 0.5 / sqrt(draws). Prior 0.5 is Jeffreys'. Source: Gelman A. et al., Bayesian Data Analysis, section 3.4 (from
 * memory); checked for k = 1 against the exact integral (references `5-dirichlet-top`).
 *
 * @param counts reports per bar: all bars, shown or not
 * @returns one probability per bar, in the order given
 */
export function topProbabilities(
  counts: readonly number[],
  options: { k: number; seed: number; draws?: number; prior?: number },
): number[] {
  const { k, seed, draws = 4000, prior = 0.5 } = options;
  for (const count of counts) requireCount('count', count);
  const random = seededRandom(seed);
  const bars = counts.map((count) => ({ mean: count + prior, deviation: Math.sqrt(count + prior) }));
  return topProbabilitiesOf(bars, k, draws, (place) => gammaVariate(bars[place]!.mean, random));
}
