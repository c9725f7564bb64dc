import { type Period, periodDays } from '#analysis/calendar/period.ts';
import { compareSumsWithPrevious, compareWithPrevious } from '#analysis/comparisons/compare-with-previous.ts';
import type { Measure } from '#contracts/analyses.ts';
import type { Change } from '#contracts/shared/change.ts';
import { falseDiscoveryRate, toChange } from './estimates.ts';
import type { Converter } from './money.rules.ts';
import { type Group, weightsOf } from './pareto.groups.ts';
import { reportsIn } from './sums.ts';

interface Compared {
  now: Period;
  before: Period;
}

const inserted = (exposure: Group['exposure']) => exposure?.terminals || null;

/** How each bar moved beyond noise, the rest of the whole as one more bar. */
export function changes(
  shown: readonly Group[],
  rest: readonly Group[],
  measure: Measure,
  money: Converter,
  periods: Compared,
): Change[] {
  return measure === 'reports' ? ofReports(shown, rest) : ofSums(shown, measure, money, periods);
}

function ofReports(shown: readonly Group[], rest: readonly Group[]): Change[] {
  const bars = shown.map(({ key, now, before, exposure, exposureBefore }) => ({
    key,
    now: { failures: reportsIn(now), exposure: inserted(exposure) },
    before: { failures: reportsIn(before), exposure: inserted(exposureBefore) },
  }));
  const remainder = {
    key: 'other',
    now: { failures: reportsIn(rest.flatMap(({ now }) => now)), exposure: null },
    before: { failures: reportsIn(rest.flatMap(({ before }) => before)), exposure: null },
  };
  const isByShare = bars.some(({ now, before }) => now.exposure === null || before.exposure === null);
  const judged = compareWithPrevious(isByShare ? [...bars, remainder] : bars, { falseDiscoveryRate });
  return bars.map((_, place) => {
    const change = judged[place]!;
    return toChange(change, change.measure === 'share_odds_ratio' ? 'share' : 'rate');
  });
}

function ofSums(shown: readonly Group[], measure: Measure, money: Converter, periods: Compared): Change[] {
  const bars = shown.map(({ key, now, before, exposure, exposureBefore }) => {
    const isRate = inserted(exposure) !== null && inserted(exposureBefore) !== null;
    const perDay = !isRate && measure !== 'rate';
    return {
      key,
      isRate,
      now: {
        ...weightsOf(now, measure, money),
        exposure: perDay ? periodDays(periods.now) : inserted(exposure),
      },
      before: {
        ...weightsOf(before, measure, money),
        exposure: perDay ? periodDays(periods.before) : inserted(exposureBefore),
      },
    };
  });
  return compareSumsWithPrevious(bars, { falseDiscoveryRate }).map((change, place) =>
    toChange(change, bars[place]!.isRate ? 'rate' : 'count'),
  );
}
