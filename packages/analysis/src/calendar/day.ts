import { DateTime } from 'luxon';

/** A calendar day `YYYY-MM-DD`, already in the plant's zone; days compare as text. */
export type Day = string;

/** Monday 1 to Sunday 7, as in ISO 8601. */
export type Weekday = 1 | 2 | 3 | 4 | 5 | 6 | 7;

/** The day at midnight UTC, where every day has 24 hours. @throws RangeError when it is no day of the calendar */
export function parseDay(day: Day): DateTime {
  const parsed = DateTime.fromFormat(day, 'yyyy-MM-dd', { zone: 'utc' });
  if (!parsed.isValid) throw new RangeError(`"${day}" is not a day such as 2026-03-31.`);
  return parsed;
}

export const addDays = (day: Day, days: number): Day => parseDay(day).plus({ days }).toFormat('yyyy-MM-dd');

/** Whole days from one day to another; negative when the second is earlier. */
export const daysBetween = (from: Day, to: Day): number => parseDay(to).diff(parseDay(from), 'days').days;

export const weekdayOf = (day: Day): Weekday => parseDay(day).weekday as Weekday;
