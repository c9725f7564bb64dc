import { betaUpperTail } from '../numeric/beta-distribution.ts';
import { type Coverage, customaryCoverage } from './tolerance-bound.ts';

export type OrderStatisticBound =
  | { value: number /** place in the sorted sample, from 1 */; rank: number; reason: null }
  | { value: null /** sample size from which its smallest value would do */; needed: number; reason: 'too_few' };

/**
 * Lower tolerance bound without any assumption about the distribution: the largest order statistic that lies, with the
 * confidence, below the coverage of all values.
 *
 * The r-th smallest does when P(Bin(n, 1 - coverage) >= r) >= confidence; the smallest of 59 for 95/95.
 * Source: Wilks S.S. (1941) Ann. Math. Statist. 12:91-96 (from memory); reference `3-success-run`.
 */
export function orderStatisticBound(
  values: readonly number[],
  { coverage, confidence }: Coverage = customaryCoverage,
): OrderStatisticBound {
  const n = values.length;
  const holds = (rank: number): boolean =>
    1 - betaUpperTail(1 - coverage, rank, n - rank + 1) >= 1 - 1e-12 - (1 - confidence);
  let rank = 0;
  while (rank < n && holds(rank + 1)) rank += 1;
  if (rank === 0) {
    return { value: null, needed: Math.ceil(Math.log(1 - confidence) / Math.log(coverage) - 1e-9), reason: 'too_few' };
  }
  return { value: values.toSorted((a, b) => a - b)[rank - 1]!, rank, reason: null };
}
