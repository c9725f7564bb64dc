import { DateTime } from 'luxon';
import type { Day } from './day.ts';

/** When a plant works. Times are the plant's wall clock; `24:00` is the end of the day. */
export type WorkingCalendar = {
  /** IANA zone */
  zone: string;
  /** seven lists of [from, to], Monday first, in order and without overlap */
  hours: readonly (readonly (readonly [string, string])[])[];
  /** days without work */
  holidays: ReadonlySet<Day>;
};

type Opening = { from: number; to: number };

const minute = 60_000;
const dayLength = 86_400_000;
/** A calendar that has not opened for so long never will. */
const mostDays = 20_000;

/** Days since 1970-01-01, so that going from day to day needs no calendar. */
type DayNumber = number;
const dayOf = (at: Date, zone: string): DayNumber => {
  const { year, month, day } = DateTime.fromJSDate(at, { zone });
  return Date.UTC(year, month - 1, day) / dayLength;
};
const textOf = (day: DayNumber): Day => new Date(day * dayLength).toISOString().slice(0, 10);
/** From Monday, 0: 1 January 1970 was a Thursday. */
const weekdayIndex = (day: DayNumber): number => (((day + 3) % 7) + 7) % 7;

/** The instant of a wall-clock time; a time that the clocks skip in spring is the moment of the change's later side. */
function instantOf(day: DayNumber, time: string, zone: string): number {
  const [date, clock] = time === '24:00' ? [day + 1, '00:00'] : [day, time];
  return DateTime.fromISO(`${textOf(date)}T${clock}`, { zone }).toMillis();
}

/** What is open on one day; nothing on a holiday. Lengths are real ones: an hour longer or shorter where the clocks change. */
function openingsOn(day: DayNumber, { zone, hours, holidays }: WorkingCalendar): Opening[] {
  const shifts = hours[weekdayIndex(day)] ?? [];
  if (shifts.length === 0 || holidays.has(textOf(day))) return [];
  return shifts
    .map(([from, to]) => ({ from: instantOf(day, from, zone), to: instantOf(day, to, zone) }))
    .filter(({ from, to }) => from < to);
}

function* openingsFrom(at: Date, calendar: WorkingCalendar): Generator<Opening> {
  const first = dayOf(at, calendar.zone);
  for (let day = first; day < first + mostDays; day++) {
    for (const { from, to } of openingsOn(day, calendar)) {
      if (to > at.getTime()) yield { from: Math.max(from, at.getTime()), to };
    }
  }
  throw new RangeError('The calendar has too little working time.');
}

/**
 * The instant at which so many working minutes have passed since `at`; outside working time counting begins when work does.
 * Working time that ends exactly with a shift ends there, not when the next one begins. Definition; checked with pandas.
 *
 * @throws RangeError for negative minutes, or when the calendar hardly ever opens
 */
export function addWorkingMinutes(at: Date, minutes: number, calendar: WorkingCalendar): Date {
  if (!(minutes >= 0)) throw new RangeError(`minutes must be 0 or more, not ${minutes}.`);
  if (minutes === 0) return at;
  let left = minutes * minute;
  for (const { from, to } of openingsFrom(at, calendar)) {
    if (left <= to - from) return new Date(from + left);
    left -= to - from;
  }
  return at;
}

/** Working minutes from one instant to another; negative when the second is earlier. */
export function workingMinutesBetween(from: Date, to: Date, calendar: WorkingCalendar): number {
  if (to < from) return -workingMinutesBetween(to, from, calendar);
  let sum = 0;
  const last = dayOf(to, calendar.zone);
  for (let day = dayOf(from, calendar.zone); day <= last; day++) {
    for (const opening of openingsOn(day, calendar)) {
      sum += Math.max(0, Math.min(opening.to, to.getTime()) - Math.max(opening.from, from.getTime()));
    }
  }
  return sum / minute;
}

/**
 * The close of work on the n-th working day after the day of `at`, which is not counted itself.
 * Source: Regulation (EEC, Euratom) No 1182/71, Article 3: the day of the event does not count, and a period in working days
 * ends with the last of them; here with its working time instead of at midnight. Checked with numpy's business days.
 *
 * @param days 1 or more
 */
export function addWorkingDays(at: Date, days: number, calendar: WorkingCalendar): Date {
  if (!Number.isSafeInteger(days) || days < 1)
    throw new RangeError(`days must be a whole number of 1 or more, not ${days}.`);
  const event = dayOf(at, calendar.zone);
  let left = days;
  for (let day = event + 1; day < event + mostDays; day++) {
    const close = openingsOn(day, calendar).at(-1);
    if (close && --left === 0) return new Date(close.to);
  }
  throw new RangeError('The calendar has too little working time.');
}
