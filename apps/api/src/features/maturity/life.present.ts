import { daysBetween } from '#analysis/calendar/day.ts';
import { notComputable } from '#analysis/estimate.ts';
import { weibullFractionFailed, weibullLife } from '#analysis/maturity/weibull.ts';
import { kaplanMeier, type Lifetime } from '#analysis/survival/kaplan-meier.ts';
import type { MonthUnits } from '#api/features/analyses/analyses.service.ts';
import type { Maturity } from '#contracts/maturity.ts';
import { isSeen, type Starts } from './cohorts.ts';
import type { Aged } from './outside.queries.ts';
import { middleOf, monthOf } from './window.rules.ts';

/** Mean length of a month. */
const daysAMonth = 365.25 / 12;
const longestCurve = 60;

/** Failures in the middle of their week of age; units of a month that have not failed, as built in its middle. */
function lifetimesOf(
  starts: Starts,
  units: readonly MonthUnits[],
  aged: readonly Aged[],
  until: string,
): { failed: Lifetime[]; good: Lifetime[] } {
  const built = new Map(
    units
      .filter(({ plantId, month, units: count }) => count > 0 && isSeen(starts, plantId, month))
      .map(({ plantId, month, units: count }) => [`${plantId} ${month}`, { month, left: count }]),
  );
  const byWeek = new Map<number, number>();
  for (const { plant_id: plantId, built: day, weeks, reports } of aged) {
    const cohort = built.get(`${plantId} ${monthOf(day)}`);
    if (!cohort || cohort.left < reports) continue;
    cohort.left -= reports;
    byWeek.set(weeks, (byWeek.get(weeks) ?? 0) + reports);
  }
  return {
    failed: [...byWeek].map(([weeks, count]) => ({ time: (weeks * 7 + 3.5) / daysAMonth, failed: true, units: count })),
    good: [...built.values()].map(({ month, left }) => ({
      time: Math.max(1, daysBetween(middleOf(month), until)) / daysAMonth,
      failed: false,
      units: left,
    })),
  };
}

const unitsIn = (lifetimes: readonly Lifetime[]): number => lifetimes.reduce((sum, { units = 1 }) => sum + units, 0);

export function presentLife(
  starts: Starts,
  units: readonly MonthUnits[],
  aged: readonly Aged[],
  until: string,
): Maturity['life'] {
  const { failed, good } = lifetimesOf(starts, units, aged, until);
  const all = [...failed, ...good];
  const fitted = weibullLife(all);
  const none = fitted.reason === null ? null : notComputable(fitted.reason);
  const oldest = Math.max(12, ...good.map(({ time }) => Math.ceil(time)));
  const months = Array.from({ length: Math.min(longestCurve, oldest + 12) }, (_, month) => month + 1);
  return {
    reports: unitsIn(failed),
    units: unitsIn(all),
    steps: kaplanMeier(all).map(({ time, atRisk, failures, survival, interval }) => ({
      months: time,
      atRisk,
      failures,
      failed: 1 - survival,
      interval: interval && { low: 1 - interval.high, high: 1 - interval.low, confidence: interval.confidence },
    })),
    weibull:
      fitted.reason === null
        ? {
            shape: fitted.shape,
            characteristicLifeMonths: fitted.characteristicLife,
            curve: months.map((month) => ({ months: month, failed: weibullFractionFailed(fitted, month) })),
          }
        : { shape: none!, characteristicLifeMonths: none!, curve: [] },
  };
}
