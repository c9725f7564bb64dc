import { addDays, type Day, daysBetween, type Weekday } from './day.ts';
import { weekStart } from './week.ts';

/** Half-open: `from` belongs to it, `to` does not. */
export type Period = { from: Day; to: Day };

/** Days in a period. @throws RangeError when `to` is not after `from` */
export function periodDays({ from, to }: Period): number {
  const days = daysBetween(from, to);
  if (days <= 0) throw new RangeError(`A period must end after it starts; ${to} is not after ${from}.`);
  return days;
}

/** The last `weeks` whole reporting weeks, the one that `day` lies in included. */
export function weeksEndingWith(day: Day, weeks: number, firstWeekday: Weekday = 1): Period {
  const to = addDays(weekStart(day, firstWeekday), 7);
  return { from: addDays(to, -7 * weeks), to };
}

/** The period of equal length that ends where this one starts. */
export const previousPeriod = (period: Period): Period => ({
  from: addDays(period.from, -periodDays(period)),
  to: period.from,
});

const yearOfWeeks = 52 * 7;

/**
 * The same weekdays a year ago: a whole number of years of 52 weeks back, far enough not to overlap, so that equal weeks are
 * compared. After a year of 53 weeks the week numbers shift by one.
 */
export function yearAgoPeriod(period: Period): Period {
  const back = Math.ceil(periodDays(period) / yearOfWeeks) * yearOfWeeks;
  return { from: addDays(period.from, -back), to: addDays(period.to, -back) };
}

/** The reporting weeks that a period touches; the first and last are cut at its ends, so that they cover it exactly. */
export function weeksOf(period: Period, firstWeekday: Weekday = 1): Period[] {
  periodDays(period);
  const starts = [period.from];
  for (let next = addDays(weekStart(period.from, firstWeekday), 7); next < period.to; next = addDays(next, 7)) {
    starts.push(next);
  }
  return starts.map((from, place) => ({ from, to: starts[place + 1] ?? period.to }));
}
