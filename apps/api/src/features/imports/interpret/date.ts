/** Days, with or without a time, as people write them. The order of day and month is the column's, never a single value's. */
import type { dateOrders } from '#contracts/imports.ts';
import type { Cell } from '../formats/raw-row.ts';
import { serialDate } from '../formats/xlsx/serial-date.ts';
import { monthOf } from './month-names.ts';
import { readTime, type TimeOfDay } from './time.ts';

export type DateOrder = (typeof dateOrders)[number];

export interface Moment {
  /** `YYYY-MM-DD`, as written. */
  day: string;
  time: TimeOfDay | null;
}
export type DateReading = Moment | 'not_a_date' | 'out_of_range';

/** What one text can mean: the same moment under every order when the text leaves no choice. */
type Readings = Partial<Record<DateOrder, DateReading>>;

const parts = /^(\d{1,6})([./\- ])\s?(\d{1,2})\2\s?(\d{1,6})$/;
const dayMonthName = /^(\d{1,2})(?:st|nd|rd|th)?[.\s-]*\s*([\p{L}]{3,9}\.?)[\s,.-]*(\d{2}|\d{4,6})$/u;
const monthNameDay = /^([\p{L}]{3,9}\.?)\s*(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{2}|\d{4,6})$/u;
const weekday = /^(?:mo|tu|di|we|mi|th|do|fr|sa|su|so)\p{L}*[.,]?\s+(?=[\d\p{L}])/iu;
const eightDigits = /^\d{8}$/;
const serial = /^\d{5}(?:\.\d+)?$/;

/** Every meaning of a date text. Empty where it is no date at all. */
export function readingsOf(cell: Cell, from1904 = false): Readings {
  if (typeof cell === 'number') return same(readSerial(cell, from1904));
  const [dayText, time] = splitTime(cell.trim().replace(weekday, ''));
  if (time === undefined) return {};
  if (serial.test(dayText) && time === null) return same(readSerial(Number(dayText), from1904));
  const named = readNamed(dayText);
  if (named) return same(moment(named[0], named[1], named[2], time));
  return readNumeric(dayText, time);
}

/** The meaning of a cell under the column's order. */
export function readDate(cell: Cell, order: DateOrder, from1904 = false): DateReading {
  return readingsOf(cell, from1904)[order] ?? 'not_a_date';
}

function readNumeric(text: string, time: TimeOfDay | null): Readings {
  const run = eightDigits.exec(text);
  if (run) {
    const digits = run[0];
    const yearFirst = moment(Number(digits.slice(0, 4)), Number(digits.slice(4, 6)), Number(digits.slice(6)), time);
    return typeof yearFirst === 'object'
      ? same(yearFirst)
      : yearLast(digits.slice(0, 2), digits.slice(2, 4), digits.slice(4), time);
  }
  const three = parts.exec(text);
  if (!three) return {};
  const [, first, , second, last] = three as unknown as [string, string, string, string, string];
  if (first.length > 2) return same(moment(fullYear(first), Number(second), Number(last), time));
  if (last.length === 1) return {};
  const readings = yearLast(first, second, last, time);
  const yearFirst =
    last.length === 2 && first.length === 2
      ? moment(fullYear(first), Number(second), Number(last), time)
      : 'not_a_date';
  if (yearFirst !== 'not_a_date') readings.ymd = yearFirst;
  return isSafe(readings) ? same(readings.dmy!) : readings;
}

function yearLast(first: string, second: string, last: string, time: TimeOfDay | null): Readings {
  const readings: Readings = {};
  const dmy = moment(fullYear(last), Number(second), Number(first), time);
  const mdy = moment(fullYear(last), Number(first), Number(second), time);
  if (dmy !== 'not_a_date') readings.dmy = dmy;
  if (mdy !== 'not_a_date') readings.mdy = mdy;
  return readings;
}

function readNamed(text: string): [year: number, month: number, day: number] | null {
  const first = dayMonthName.exec(text);
  const [day, name, year] = first ? [first[1], first[2], first[3]] : reorder(monthNameDay.exec(text));
  const month = name ? monthOf(name) : null;
  return month ? [fullYear(year!), month, Number(day)] : null;
}

const reorder = (match: RegExpExecArray | null) => (match ? [match[2], match[1], match[3]] : []);

function readSerial(number: number, from1904: boolean): DateReading {
  const iso = serialDate(number, from1904);
  if (!iso) return 'not_a_date';
  const [year, month, day] = iso.slice(0, 10).split('-').map(Number) as [number, number, number];
  return moment(year, month, day, iso.length > 10 ? { clock: iso.slice(11, 19), offset: null } : null);
}

function moment(year: number, month: number, day: number, time: TimeOfDay | null): DateReading {
  if (month < 1 || month > 12 || day < 1 || day > 31) return 'not_a_date';
  if (year < 2000 || year > 2099) return 'out_of_range';
  const at = new Date(Date.UTC(year, month - 1, day));
  if (at.getUTCDate() !== day) return 'not_a_date';
  return { day: at.toISOString().slice(0, 10), time };
}

/** Two digits are a year of this century: reports before 2000 are out of range anyway. */
const fullYear = (year: string): number => (year.length === 2 ? 2000 + Number(year) : Number(year));

const same = (reading: DateReading): Readings =>
  reading === 'not_a_date' ? {} : { ymd: reading, dmy: reading, mdy: reading };

/** Day and month are equal and no other order applies, as in 05/05/2026. */
function isSafe({ ymd, dmy, mdy }: Readings): boolean {
  return !ymd && typeof dmy === 'object' && typeof mdy === 'object' && dmy.day === mdy.day;
}

/** Date text and time of day; undefined where what follows the date is no time. */
function splitTime(text: string): [string, TimeOfDay | null | undefined] {
  const at = /[T\s,]+(?=\d{1,2}[:.h]\d{2})/i.exec(text);
  if (!at || at.index === 0) return [text, null];
  const dayText = text.slice(0, at.index);
  if (!/\d$/.test(dayText)) return [text, null];
  return [dayText, readTime(text.slice(at.index + at[0].length)) ?? undefined];
}
