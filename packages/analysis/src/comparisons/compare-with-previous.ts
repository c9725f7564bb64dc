import { defaultConfidence, type Interval, type Reason } from '../estimate.ts';
import type { ExactTest } from '../numeric/exact-test.ts';
import { type CountedExposure, rateRatio } from '../rates/rate-ratio.ts';
import { benjaminiHochberg } from './benjamini-hochberg.ts';
import { fisherTest } from './fisher-test.ts';

export type ComparedBar = { key: string; now: CountedExposure; before: CountedExposure };

export type Verdict = 'up' | 'down' | 'not_beyond_noise';

/** `rate_ratio`: rate now over rate before. `share_odds_ratio`: odds of a report being in this bar, now over before. */
export type ChangeMeasure = 'rate_ratio' | 'share_odds_ratio';

export type Change = { key: string; measure: ChangeMeasure } & (
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

type Tested = { key: string; measure: ChangeMeasure; ratio: number | null; interval: Interval; p: ExactTest };
type Untested = { key: string; measure: ChangeMeasure; reason: Reason };

/**
 * What moved beyond noise between two periods, bar by bar.
 *
 * A bar with its exposure in both periods is judged by the exact ratio of its rates (`rateRatio`); one without, by its share
 * of all reports (`fisherTest`), which sees a shift between bars but not a change of all at once. The two-sided p-values
 * are adjusted over the bars, so that at most `falseDiscoveryRate` of the bars called moved did not move, on average.
 *
 * @param bars counts of independent reports (not terminals, not money) and exposure, now and before; all bars of the total
 * @returns one change per bar, in the order given; `no_reports` where nothing was reported in either period, or no
 *   comparison by share is possible because a whole period is empty
 */
export function compareWithPrevious(
  bars: readonly ComparedBar[],
  options: { confidence?: number; falseDiscoveryRate?: number } = {},
): Change[] {
  const { confidence = defaultConfidence, falseDiscoveryRate = 0.05 } = options;
  const totals = {
    now: bars.reduce((sum, bar) => sum + bar.now.failures, 0),
    before: bars.reduce((sum, bar) => sum + bar.before.failures, 0),
  };
  const results = bars.map((bar) =>
    bar.now.exposure && bar.before.exposure ? byRate(bar, confidence) : byShare(bar, totals, confidence),
  );
  const tested = results.filter((result) => 'p' in result);
  const adjusted = benjaminiHochberg(tested.map((result) => result.p.twoSided));
  const adjustedOf = new Map(tested.map((result, place) => [result, adjusted[place]!]));

  return results.map((result): Change => {
    if (!('p' in result)) return { ...result, ratio: null, interval: null, p: null, adjustedP: null, verdict: null };
    const adjustedP = adjustedOf.get(result)!;
    const direction = result.p.greater < result.p.less ? 'up' : 'down';
    const verdict = adjustedP <= falseDiscoveryRate ? direction : 'not_beyond_noise';
    return { ...result, p: result.p.twoSided, adjustedP, verdict, reason: null };
  });
}

function byRate({ key, now, before }: ComparedBar, confidence: number): Tested | Untested {
  const { value, interval, p, reason } = rateRatio(now, before, confidence);
  return p === null
    ? { key, measure: 'rate_ratio', reason }
    : { key, measure: 'rate_ratio', ratio: value, interval, p };
}

function byShare(
  { key, now, before }: ComparedBar,
  totals: { now: number; before: number },
  confidence: number,
): Tested | Untested {
  const measure = 'share_odds_ratio';
  const empty = now.failures + before.failures === 0 || totals.now === 0 || totals.before === 0;
  if (empty) return { key, measure, reason: 'no_reports' };
  const { oddsRatio, interval, p } = fisherTest(
    [
      [now.failures, totals.now - now.failures],
      [before.failures, totals.before - before.failures],
    ],
    confidence,
  );
  return { key, measure, ratio: oddsRatio, interval, p };
}
