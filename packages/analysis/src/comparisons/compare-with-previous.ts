import { defaultConfidence } from '../estimate.ts';
import { type CountedExposure, rateRatio } from '../rates/rate-ratio.ts';
import { fisherTest } from './fisher-test.ts';
import { type SummedExposure, sumRatio } from './sum-ratio.ts';
import { type Change, type Comparison, judge } from './verdict.ts';

export type CountedBar = { key: string; now: CountedExposure; before: CountedExposure };
export type SummedBar = { key: string; now: SummedExposure; before: SummedExposure };

type Options = { confidence?: number; falseDiscoveryRate?: number };

/**
 * What moved beyond noise between two periods, bar by bar.
 *
 * A bar with its exposure in both periods is judged by the exact ratio of its rates (`rateRatio`); one without, by its share
 * of all reports (`fisherTest`), which sees a shift between bars but not a change of all at once. The two-sided p-values
 * are adjusted over the bars, so that at most `falseDiscoveryRate` of the bars called moved did not move, on average.
 *
 * @param bars counts of independent reports and exposure, now and before; all bars of the total
 * @returns one change per bar, in the order given; `no_reports` where nothing was reported in either period, or no
 *   comparison by share is possible because a whole period is empty
 */
export function compareWithPrevious(bars: readonly CountedBar[], options: Options = {}): Change[] {
  const { confidence = defaultConfidence, falseDiscoveryRate = 0.05 } = options;
  const totals = {
    now: bars.reduce((sum, bar) => sum + bar.now.failures, 0),
    before: bars.reduce((sum, bar) => sum + bar.before.failures, 0),
  };
  const comparisons = bars.map((bar): Comparison => {
    if (!bar.now.exposure || !bar.before.exposure) return byShare(bar, totals, confidence);
    const { value, ...result } = rateRatio(bar.now, bar.before, confidence);
    return { key: bar.key, measure: 'rate_ratio', ratio: value, ...result } as Comparison;
  });
  return judge(comparisons, falseDiscoveryRate);
}

/**
 * The same for money or terminals, where each report counts with its own weight (`sumRatio`). Without production, periods
 * may be compared per day by giving their lengths as exposure; the answer is then about the amount, not the rate.
 */
export function compareSumsWithPrevious(bars: readonly SummedBar[], options: Options = {}): Change[] {
  const { confidence = defaultConfidence, falseDiscoveryRate = 0.05 } = options;
  const comparisons = bars.map(({ key, now, before }): Comparison => {
    const { value, ...result } = sumRatio(now, before, confidence);
    return { key, measure: 'sum_rate_ratio', ratio: value, ...result } as Comparison;
  });
  return judge(comparisons, falseDiscoveryRate);
}

function byShare(
  { key, now, before }: CountedBar,
  totals: { now: number; before: number },
  confidence: number,
): Comparison {
  const measure = 'share_odds_ratio';
  const empty = now.failures + before.failures === 0 || totals.now === 0 || totals.before === 0;
  if (empty) return { key, measure, ratio: null, interval: null, p: null, reason: 'no_reports' };
  const { oddsRatio, interval, p } = fisherTest(
    [
      [now.failures, totals.now - now.failures],
      [before.failures, totals.before - before.failures],
    ],
    confidence,
  );
  return { key, measure, ratio: oddsRatio, interval, p };
}
