import { addDays, type Day, parseDay, type Weekday, weekdayOf } from './day.ts';

export type IsoWeek = { year: number; week: number; weekday: Weekday };

/** ISO 8601 week of a day: weeks start on Monday, and week 1 has the year's first Thursday. Source: ISO 8601-1:2019. */
export function isoWeek(day: Day): IsoWeek {
  const { weekYear, weekNumber, weekday } = parseDay(day);
  return { year: weekYear, week: weekNumber, weekday: weekday as Weekday };
}

/** First day of the reporting week that a day lies in. */
export const weekStart = (day: Day, firstWeekday: Weekday = 1): Day =>
  addDays(day, -((weekdayOf(day) - firstWeekday + 7) % 7));

/**
 * Name of the reporting week that a day lies in, such as "2026-W53": the ISO week that holds most of its days, which is the
 * ISO week itself where weeks start on Monday.
 */
export function weekName(day: Day, firstWeekday: Weekday = 1): string {
  const { year, week } = isoWeek(addDays(weekStart(day, firstWeekday), 3));
  return `${year}-W${String(week).padStart(2, '0')}`;
}
