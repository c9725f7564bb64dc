import type { z } from 'zod';
import type { Weekday } from '#analysis/calendar/day.ts';
import { type Period, weeksOf } from '#analysis/calendar/period.ts';
import { weekStart } from '#analysis/calendar/week.ts';
import { sigmaLevel } from '#analysis/rates/sigma-level.ts';
import type { RateBucket, Rates } from '#contracts/analyses.ts';
import type { Asked } from './asked.service.ts';
import { dpmoEstimate, perMillionOf } from './estimates.ts';
import { type Exposure, isWider } from './exposure.queries.ts';
import { monthStart, monthsOf } from './months.ts';
import { addExposures } from './pareto.groups.ts';
import type { Bucket, BucketExposure, BucketSums } from './rates.queries.ts';
import { reportsIn, type Sums, terminalsIn, terminalWeights } from './sums.ts';

function figures(rows: readonly Sums[], produced: readonly Exposure[]) {
  const exposure = addExposures(produced);
  const failed = terminalWeights(rows);
  return {
    reports: reportsIn(rows),
    terminals: terminalsIn(rows),
    exposureTerminals: exposure.terminals,
    exposureUnits: exposure.units,
    dpmo: dpmoEstimate(failed, exposure.terminals),
    ppm: perMillionOf(failed, exposure.units),
  };
}

/** Buckets with the ends of the period cut off, each with the day that SQL names it by. */
const bucketsOf = (period: Period, bucket: Bucket, firstWeekday: Weekday): (Period & { name: string })[] =>
  bucket === 'week'
    ? weeksOf(period, firstWeekday).map((week) => ({ ...week, name: weekStart(week.from, firstWeekday) }))
    : monthsOf(period).map((month) => ({ ...month, name: monthStart(month.from) }));

export function presentRates(
  { head, period, plants, own, filter }: Pick<Asked, 'head' | 'period' | 'plants' | 'own' | 'filter'>,
  bucket: Bucket,
  { sums, exposure }: { sums: readonly BucketSums[]; exposure: readonly BucketExposure[] },
): Rates {
  const overall: z.infer<typeof RateBucket> = { ...period, ...figures(sums, exposure) };
  const sumsBy = Map.groupBy(sums, (row) => row.bucket);
  const exposureBy = Map.groupBy(exposure, (row) => row.bucket);
  const sigma = overall.dpmo.value === null ? null : sigmaLevel(overall.dpmo.value).value;
  return {
    ...head,
    bucket,
    overall,
    buckets: bucketsOf(period, bucket, own.firstWeekday).map(({ name, from, to }) => ({
      from,
      to,
      ...figures(sumsBy.get(name) ?? [], exposureBy.get(name) ?? []),
    })),
    byPlant: plants.map(({ id, code }) => ({
      plantId: id,
      plantCode: code,
      ...figures(
        sums.filter((row) => row.plant_id === id),
        exposure.filter((row) => row.plant_id === id),
      ),
    })),
    sigma,
    exposureScope: isWider(filter) ? 'wider' : 'exact',
  };
}
