import { seededRandom } from '../numeric/random.ts';
import { bootstrapTotal, type SumStatistics } from './bootstrap-total.ts';
import { topProbabilitiesOf } from './top-k.ts';

/**
 * Probability that each bar belongs to the top k by money or terminals: the fraction of bootstrap draws (see
 * `bootstrapTotal`) in which it is among the k largest. One dear report makes a bar large but not certain.
 *
 * @param bars sums per bar: all bars, shown or not, in one currency or in terminals
 * @returns one probability per bar, in the order given
 */
export function topSumProbabilities(
  bars: readonly SumStatistics[],
  options: { k: number; seed: number; draws?: number },
): number[] {
  const { k, seed, draws = 4000 } = options;
  const random = seededRandom(seed);
  const moments = bars.map((bar) => ({ mean: bar.sum, deviation: Math.sqrt(bar.sumOfSquares) }));
  return topProbabilitiesOf(moments, k, draws, (place) => bootstrapTotal(bars[place]!, random));
}
