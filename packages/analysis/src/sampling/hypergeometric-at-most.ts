import { logGamma } from '../numeric/gamma-distribution.ts';
import { requireCount } from '../numeric/require-count.ts';

const logChoose = (n: number, k: number): number => logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);

/** A lot of `size` items, `nonconforming` of them so, from which `drawn` are taken without putting back. */
export type Draw = { size: number; nonconforming: number; drawn: number };

/** P(at most `most` nonconforming items among those drawn), hypergeometric, summed by recursion from its first term. */
export function hypergeometricAtMost(most: number, { size, nonconforming, drawn }: Draw): number {
  requireCount('size', size);
  requireCount('nonconforming', nonconforming);
  requireCount('drawn', drawn);
  if (nonconforming > size || drawn > size) throw new RangeError('nonconforming and drawn must not exceed size.');
  const conforming = size - nonconforming;
  const first = Math.max(0, drawn - conforming);
  const last = Math.min(most, drawn, nonconforming);
  if (last >= Math.min(drawn, nonconforming)) return 1;
  let sum = 0;
  for (let found = first; found <= last; found++) {
    sum += Math.exp(logChoose(nonconforming, found) + logChoose(conforming, drawn - found) - logChoose(size, drawn));
  }
  return Math.min(1, sum);
}
