import { addDays, type Day, parseDay } from '#analysis/calendar/day.ts';
import type { Period } from '#analysis/calendar/period.ts';
import { addMonths, type Month } from '#analysis/maturity/triangle.ts';
import { type Calendar, today } from '#api/features/analyses/period.rules.ts';

export const monthOf = (day: Day): Month => day.slice(0, 7);
export const firstDayOf = (month: Month): Day => `${month}-01`;

/** No day before it is held; the earliest build month begins with it. */
const earliest: Day = '2000-01-01';
const later = (a: Day, b: Day): Day => (a > b ? a : b);

/** The day after the last month that is fully reported: no later than today, and no later than asked. */
export function reportedUntil(asked: Day | undefined, at: Date, own: Calendar): Day {
  const tomorrow = addDays(today(at, own), 1);
  const end = asked !== undefined && asked < tomorrow ? asked : tomorrow;
  return later(firstDayOf(monthOf(end)), addDays(earliest, 31));
}

/** So many build months up to the last that is fully reported. */
export const buildMonths = (until: Day, months: number): Period => ({
  from: later(firstDayOf(addMonths(monthOf(until), -months)), earliest),
  to: until,
});

export const middleOf = (month: Month): Day => {
  const first = parseDay(firstDayOf(month));
  return addDays(firstDayOf(month), Math.floor((first.daysInMonth ?? 30) / 2));
};

const numberOf = (month: Month): number => Number(month.slice(0, 4)) * 12 + Number(month.slice(5));

/** Whole months from one to another; negative when the second is earlier. */
export const monthsBetween = (from: Month, to: Month): number => numberOf(to) - numberOf(from);
