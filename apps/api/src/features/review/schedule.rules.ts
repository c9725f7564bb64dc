import { DateTime } from 'luxon';
import { addDays, type Day, type Weekday } from '#analysis/calendar/day.ts';
import type { Period } from '#analysis/calendar/period.ts';
import { weekStart } from '#analysis/calendar/week.ts';
import { today } from '#api/features/analyses/period.rules.ts';

export interface Place {
  zone: string;
  weekStart: number;
}

const readyHour = 6;
const instant = (day: Day, zone: string, hour = 0) => DateTime.fromISO(day, { zone }).set({ hour });
const weekBefore = (first: Day): Period => ({ from: addDays(first, -7), to: first });

/** The newest week whose review is due at the plant: from 06:00 in its own zone on the first day of its own next week. */
export function dueWeek(at: Date, { zone, weekStart: firstWeekday }: Place): Period {
  const first = weekStart(today(at, { zone, firstWeekday: 1 }), firstWeekday as Weekday);
  return weekBefore(at.getTime() >= instant(first, zone, readyHour).toMillis() ? first : addDays(first, -7));
}

/** The same for the group, whose calendar is UTC and Monday: from 06:00 UTC, and not before the week is over at every plant. */
export function dueWeekOfGroup(at: Date, places: readonly Place[]): Period {
  const first = weekStart(today(at, { zone: 'utc', firstWeekday: 1 }), 1);
  const ready = [instant(first, 'utc', readyHour), ...places.map(({ zone }) => instant(first, zone))];
  return weekBefore(ready.every((it) => at.getTime() >= it.toMillis()) ? first : addDays(first, -7));
}

/** Whether the week has ended at every plant. */
export const isOver = ({ to }: Period, at: Date, places: readonly Place[]): boolean =>
  places.every(({ zone }) => at.getTime() >= instant(to, zone).toMillis());
