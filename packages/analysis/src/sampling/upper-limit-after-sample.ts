import { betaQuantile } from '../numeric/beta-distribution.ts';
import { requireConfidence, requireCount } from '../numeric/require-count.ts';
import { hypergeometricAtMost } from './hypergeometric-at-most.ts';

export type UpperLimit = {
  /** one-sided upper limit of the fraction nonconforming, 0 to 1 */
  fraction: number;
  /** the same as items of the lot, those found included; null without a lot size */
  items: number | null;
  confidence: number;
};

/**
 * The most that may be wrong with what a sample was taken from: what "zero found in n" does not exclude.
 *
 * Without a lot size, Clopper and Pearson's one-sided limit: with none found 1 - alpha^(1/n), about 3 / n at 95 %.
 * With it, the largest number D of nonconforming items in the lot with P(X <= found) > alpha, hypergeometric, exact.
 * Sources: Clopper C.J. and Pearson E.S. (1934); Hanley J.A. and Lippman-Hand A. (1983) JAMA 249:1743-1745, rule of three;
 * Buonaccorsi J.P. (1987) The American Statistician 41:215-218 for the finite lot (from memory). The sample must be random.
 *
 * @param lotSize items the sample was drawn from, itself included; null when there is no fixed lot
 */
export function upperLimitAfterSample(
  found: number,
  inspected: number,
  lotSize: number | null,
  confidence = 0.95,
): UpperLimit {
  requireCount('found', found);
  requireCount('inspected', inspected);
  requireConfidence(confidence);
  if (found > inspected) throw new RangeError(`found (${found}) must not exceed inspected (${inspected}).`);
  const alpha = 1 - confidence;
  if (lotSize === null) {
    const fraction = found === inspected ? 1 : betaQuantile(confidence, found + 1, inspected - found);
    return { fraction, items: null, confidence };
  }
  requireCount('lotSize', lotSize);
  if (inspected > lotSize) throw new RangeError(`inspected (${inspected}) must not exceed lotSize (${lotSize}).`);
  const possible = (nonconforming: number): boolean =>
    hypergeometricAtMost(found, { size: lotSize, nonconforming, drawn: inspected }) > alpha;
  let items = found;
  let tooMany = lotSize - (inspected - found) + 1;
  while (tooMany - items > 1) {
    const middle = Math.floor((items + tooMany) / 2);
    if (possible(middle)) items = middle;
    else tooMany = middle;
  }
  return { fraction: lotSize === 0 ? 0 : items / lotSize, items, confidence };
}
