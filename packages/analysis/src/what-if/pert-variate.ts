import type { Random } from '../numeric/random.ts';
import { gammaVariate } from '../numeric/variates.ts';

/**
 * Beta-PERT variate between `low` and `high`: Beta(1 + 4 (likely - low) / span, 1 + 4 (high - likely) / span), so the likeliest
 * value weighs four times as much as an end.
 * Source: Malcolm D.G., Roseboom J.H., Clark C.E. and Fazar W. (1959) Operations Research 7:646-669 (from memory).
 */
export function pertVariate(range: { low: number; likely: number; high: number }, random: Random): number {
  const { low, likely, high } = range;
  const span = high - low;
  if (span === 0) return low;
  const a = gammaVariate(1 + (4 * (likely - low)) / span, random);
  const b = gammaVariate(1 + (4 * (high - likely)) / span, random);
  return low + (span * a) / (a + b);
}
