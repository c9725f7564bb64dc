import { DateTime } from 'luxon';
import { addDays, type Day, type Weekday } from '#analysis/calendar/day.ts';
import { type Period, previousPeriod, yearAgoPeriod } from '#analysis/calendar/period.ts';
import { weekStart } from '#analysis/calendar/week.ts';
import { problem } from '#api/platform/problems.ts';

/** Whose day it is and when weeks begin: the one plant's; for several plants UTC and Monday, so that all share one calendar. */
export interface Calendar {
  zone: string;
  firstWeekday: Weekday;
}

export const calendarOf = (plants: readonly { zone: string; week_start: number }[]): Calendar =>
  plants.length === 1 && plants[0]
    ? { zone: plants[0].zone, firstWeekday: plants[0].week_start as Weekday }
    : { zone: 'utc', firstWeekday: 1 };

export const today = (at: Date, { zone }: Calendar): Day => DateTime.fromJSDate(at, { zone }).toFormat('yyyy-MM-dd');

const defaultDays = 13 * 7;

/** The period asked for; what is not given is filled in from the last 13 full weeks. */
export function periodAsked(asked: { from?: Day | undefined; to?: Day | undefined }, at: Date, own: Calendar): Period {
  const to = asked.to ?? (asked.from ? addDays(today(at, own), 1) : weekStart(today(at, own), own.firstWeekday));
  const from = asked.from ?? addDays(to, -defaultDays);
  if (from < to) return { from, to };
  throw problem('not_consistent', 'The period must end after it starts; `to` is the day after its last day.', [
    { path: 'querystring/to', message: 'must be after `from`' },
  ]);
}

/** The last full week, or the one that a day lies in. */
export function weekAsked(start: Day | undefined, at: Date, own: Calendar): Period {
  const from = weekStart(start ?? addDays(today(at, own), -7), own.firstWeekday);
  return { from, to: addDays(from, 7) };
}

export function comparedPeriod(period: Period, compare: 'previous' | 'yearAgo' | 'none'): Period | null {
  if (compare === 'none') return null;
  return compare === 'previous' ? previousPeriod(period) : yearAgoPeriod(period);
}
