/** Build months as they were seen from their start: earlier ones lack the failures from before records began. */
import { addMonths, type BuildMonth, type Month, type Triangle, triangle } from '#analysis/maturity/triangle.ts';
import type { MonthUnits } from '#api/features/analyses/analyses.service.ts';
import type { Seen } from './outside.queries.ts';
import { monthOf } from './window.rules.ts';

/** The first build month of each plant that counts; plants without any report have none. */
export type Starts = ReadonlyMap<string, Month>;

/** Reports that begin later than this day of a month do not cover it. */
const latestFirstDay = 3;

const firstWholeMonth = (day: string): Month =>
  Number(day.slice(8)) <= latestFirstDay ? monthOf(day) : addMonths(monthOf(day), 1);

/** Plants whose records begin after the last month are left out. */
export const startsOf = (
  first: readonly { plant_id: string; day: string | null }[],
  { from, last }: { from: Month; last: Month },
): Starts =>
  new Map(
    first.flatMap(({ plant_id: plantId, day }) => {
      if (day === null) return [];
      const month = firstWholeMonth(day);
      return month > last ? [] : [[plantId, month > from ? month : from] as const];
    }),
  );

export const isSeen = (starts: Starts, plantId: string, month: Month): boolean => {
  const start = starts.get(plantId);
  return start !== undefined && month >= start;
};

/** Units built per month over the plants that count; null where none was reported. */
export function buildsOf(starts: Starts, units: readonly MonthUnits[], last: Month): BuildMonth[] {
  const first = [...starts.values()].sort()[0];
  if (first === undefined) return [];
  const byMonth = new Map<Month, number>();
  for (const { plantId, month, units: built } of units)
    if (built > 0 && isSeen(starts, plantId, month)) byMonth.set(month, (byMonth.get(month) ?? 0) + built);
  const builds: BuildMonth[] = [];
  for (let month = first; month <= last; month = addMonths(month, 1))
    builds.push({ month, produced: byMonth.get(month) ?? null });
  return builds;
}

export const triangleOf = (
  starts: Starts,
  units: readonly MonthUnits[],
  seen: readonly Seen[],
  last: Month,
): Triangle =>
  triangle(
    buildsOf(starts, units, last),
    seen
      .filter(({ plant_id: plantId, built }) => isSeen(starts, plantId, monthOf(built)))
      .map(({ built, failed, reports }) => ({ built: monthOf(built), failed: monthOf(failed), count: reports })),
    last,
  );
