import { type ClosedInterval, defaultConfidence } from '../estimate.ts';
import { seededRandom } from '../numeric/random.ts';
import { requireConfidence } from '../numeric/require-count.ts';
import { simultaneousBands } from '../numeric/simultaneous-bands.ts';
import { bootstrapTotal, type SumStatistics } from './bootstrap-total.ts';

/**
 * Simultaneous intervals for the bars' shares of the money or terminals, by the bootstrap of `bootstrapTotal`.
 *
 * @param bars sums per bar; the last may be the "other" bar that adds up the rest, so that the shares are of the whole
 * @returns one interval per bar, as fractions; null where shares have no meaning (a total not above 0, or a net credit)
 */
export function sumShareIntervals(
  bars: readonly SumStatistics[],
  options: { seed: number; draws?: number; confidence?: number },
): ClosedInterval[] | null {
  const { seed, draws = 2000, confidence = defaultConfidence } = options;
  requireConfidence(confidence);
  if (bars.some((bar) => bar.sum < 0) || bars.every((bar) => bar.sum === 0)) return null;

  const random = seededRandom(seed);
  const shares = bars.map(() => new Float64Array(draws));
  for (let round = 0; round < draws; round++) {
    let total = 0;
    bars.forEach((bar, place) => {
      const value = bootstrapTotal(bar, random);
      shares[place]![round] = value;
      total += value;
    });
    for (const share of shares) share[round]! /= total;
  }
  return simultaneousBands(shares, confidence).map((band) => ({ ...band, confidence }));
}
