/** Which roll-up can answer a question: it must carry every dimension that is asked about or filtered by. */
import { addDays, type Day, parseDay } from '#analysis/calendar/day.ts';
import type { Period } from '#analysis/calendar/period.ts';
import { weekStart } from '#analysis/calendar/week.ts';
import type { Dimension } from '#contracts/shared/dimension.ts';
import { exceptionsOf, type Filter } from '#contracts/shared/filter.ts';

export type Grain = 'day' | 'week' | 'month';

/** Everything but the period that the filter narrows by. */
export function fieldsOf(filter: Filter): string[] {
  const { from: _from, to: _to, except: _except, ...fields } = filter;
  const given = Object.entries(fields).filter(
    ([, value]) => value !== undefined && !(Array.isArray(value) && value.length === 0),
  );
  return [...given.map(([field]) => field), ...exceptionsOf(filter).keys()];
}

export const carries = (dimensions: readonly Dimension[], asked: readonly string[]): boolean =>
  asked.every((field) => dimensions.some((dimension) => dimension === field));

const monthStart = (day: Day): Day => `${day.slice(0, 7)}-01`;
const nextMonth = (day: Day): Day => parseDay(monthStart(day)).plus({ months: 1 }).toFormat('yyyy-MM-dd');

const starts: Record<Grain, (day: Day) => Day> = {
  day: (day) => day,
  week: (day) => weekStart(day),
  month: monthStart,
};
const next: Record<Grain, (day: Day) => Day> = {
  day: (day) => addDays(day, 1),
  week: (day) => addDays(weekStart(day), 7),
  month: nextMonth,
};

/** The whole weeks or months inside a period, and the ragged ends before and after them; null where it holds none. */
export function splitPeriod(period: Period, grain: Grain): { whole: Period; ends: Period[] } | null {
  const from = starts[grain](period.from) === period.from ? period.from : next[grain](period.from);
  const to = starts[grain](period.to);
  if (from >= to) return null;
  const ends = [
    { from: period.from, to: from },
    { from: to, to: period.to },
  ].filter((end) => end.from < end.to);
  return { whole: { from, to }, ends };
}
