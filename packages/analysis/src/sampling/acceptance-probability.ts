import { betaUpperTail } from '../numeric/beta-distribution.ts';
import { hypergeometricAtMost } from './hypergeometric-at-most.ts';

/**
 * Chance that a sample passes: at most `accept` nonconforming items in it. From a long series of lots, where an item is
 * nonconforming with a fixed probability (binomial), one point of the operating characteristic.
 * Source: ISO 2859-1, Annex on operating characteristics; checked with scipy.
 *
 * @param fraction nonconforming, 0 to 1
 */
export function acceptanceProbability(sampleSize: number, accept: number, fraction: number): number {
  if (!(fraction >= 0 && fraction <= 1)) throw new RangeError(`fraction must be 0 to 1, not ${fraction}.`);
  if (accept >= sampleSize || fraction === 0) return 1;
  return betaUpperTail(fraction, accept + 1, sampleSize - accept);
}

/** The same for one lot of known size that holds a known number of nonconforming items (hypergeometric). */
export const lotAcceptanceProbability = (
  sampleSize: number,
  accept: number,
  lot: { size: number; nonconforming: number },
): number => hypergeometricAtMost(accept, { ...lot, drawn: sampleSize });
