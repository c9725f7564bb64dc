import { type Day, parseDay } from '#analysis/calendar/day.ts';
import type { Period } from '#analysis/calendar/period.ts';

const format = 'yyyy-MM-dd';

export const monthStart = (day: Day): Day => parseDay(day).startOf('month').toFormat(format);

/** The calendar months that a period touches; the first and last are cut at its ends, so that they cover it exactly. */
export function monthsOf(period: Period): Period[] {
  const starts = [period.from];
  for (
    let next = parseDay(period.from).startOf('month').plus({ months: 1 });
    next.toFormat(format) < period.to;
    next = next.plus({ months: 1 })
  ) {
    starts.push(next.toFormat(format));
  }
  return starts.map((from, place) => ({ from, to: starts[place + 1] ?? period.to }));
}
