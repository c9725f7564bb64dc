import type { Interval, Reason } from '../estimate.ts';
import type { ExactTest } from '../numeric/exact-test.ts';
import { benjaminiHochberg } from './benjamini-hochberg.ts';

export type Verdict = 'up' | 'down' | 'not_beyond_noise';

/**
 * `rate_ratio`: rate of reports now over before. `sum_rate_ratio`: money or terminals per exposure, now over before.
 * `share_odds_ratio`: odds of a report being in this bar, now over before.
 */
export type ChangeMeasure = 'rate_ratio' | 'sum_rate_ratio' | 'share_odds_ratio';

type Named = { key: string; measure: ChangeMeasure };

/** A comparison before it is judged among its fellows. */
export type Comparison = Named &
  (
    | { ratio: number | null; interval: Interval; p: ExactTest }
    | { ratio: null; interval: null; p: null; reason: Reason }
  );

export type Change = Named &
  (
    | {
        /** null when there was nothing before: the interval then has no upper limit */
        ratio: number | null;
        interval: Interval;
        p: number;
        /** p adjusted over all bars compared (Benjamini-Hochberg) */
        adjustedP: number;
        verdict: Verdict;
        reason: null;
      }
    | { ratio: null; interval: null; p: null; adjustedP: null; verdict: null; reason: Reason }
  );

/** Calls up or down what is significant after adjusting over all comparisons that could be made. */
export function judge(comparisons: readonly Comparison[], falseDiscoveryRate: number): Change[] {
  const adjusted = benjaminiHochberg(comparisons.flatMap(({ p }) => (p ? [p.twoSided] : [])));
  let next = 0;
  return comparisons.map((comparison): Change => {
    if (comparison.p === null) return { ...comparison, adjustedP: null, verdict: null };
    const { p } = comparison;
    const adjustedP = adjusted[next++]!;
    const direction = p.greater < p.less ? 'up' : 'down';
    const verdict = adjustedP <= falseDiscoveryRate ? direction : 'not_beyond_noise';
    return { ...comparison, p: p.twoSided, adjustedP, verdict, reason: null };
  });
}
