import { requireConfidence, requireCount } from '../numeric/require-count.ts';
import { hypergeometricAtMost } from './hypergeometric-at-most.ts';

/**
 * How many items must be inspected with none found to show that at most a fraction is nonconforming.
 *
 * Without a lot size n = ceil(ln(1 - confidence) / ln(1 - fraction)), the success-run theorem: 59 shows 5 % at 95 %.
 * With it the smallest n for which a lot with one item more than allowed would pass with a chance of alpha at most.
 * Source: Lipson C. and Sheth N.J. (1973), success run; reference `3-success-run`. The sample must be random.
 *
 * @param fraction above 0, below 1; with a lot its whole number of items floor(fraction × lotSize) may be nonconforming
 */
export function sampleToShow(fraction: number, lotSize: number | null, confidence = 0.95): number {
  requireConfidence(confidence);
  if (!(fraction > 0 && fraction < 1)) throw new RangeError(`fraction must lie between 0 and 1, not ${fraction}.`);
  if (lotSize === null) return Math.ceil(Math.log(1 - confidence) / Math.log1p(-fraction) - 1e-9);
  requireCount('lotSize', lotSize);
  const nonconforming = Math.min(lotSize, Math.floor(fraction * lotSize + 1e-9) + 1);
  let [tooFew, enough] = [-1, lotSize];
  while (enough - tooFew > 1) {
    const drawn = Math.floor((tooFew + enough) / 2);
    if (hypergeometricAtMost(0, { size: lotSize, nonconforming, drawn }) <= 1 - confidence) enough = drawn;
    else tooFew = drawn;
  }
  return enough;
}
