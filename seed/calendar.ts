import { IANAZone } from 'luxon';

/** A calendar day as whole days since 1970-01-01. */
export type DayNumber = number;

const milliseconds = 86_400_000;
export const dayNumber = (iso: string): DayNumber => Date.parse(`${iso}T00:00:00Z`) / milliseconds;

const isoDays = new Map<DayNumber, string>();
export function isoDay(day: DayNumber): string {
  const known = isoDays.get(day);
  if (known) return known;
  const iso = new Date(day * milliseconds).toISOString().slice(0, 10);
  isoDays.set(day, iso);
  return iso;
}
export const yearOf = (day: DayNumber): number => new Date(day * milliseconds).getUTCFullYear();
/** 1 = Monday … 7 = Sunday */
export const weekday = (day: DayNumber): number => ((((day + 3) % 7) + 7) % 7) + 1;
export const monthStart = (day: DayNumber): DayNumber => dayNumber(`${isoDay(day).slice(0, 7)}-01`);
export const addMonths = (day: DayNumber, months: number): DayNumber => {
  const date = new Date(day * milliseconds);
  return Date.UTC(date.getUTCFullYear(), date.getUTCMonth() + months, date.getUTCDate()) / milliseconds;
};

/** The local day at an instant. */
export const localDay = (at: Date, zone: string): DayNumber =>
  Math.floor((at.getTime() + IANAZone.create(zone).offset(at.getTime()) * 60_000) / milliseconds);

const noonOffsets = new Map<string, number>();
/** Unix milliseconds of a local time, by the zone's offset at that day's noon: right for every time after a night's switch. */
export function instantOf(zone: string, day: DayNumber, minuteOfDay: number): number {
  const key = `${zone} ${day}`;
  const offset = noonOffsets.get(key) ?? IANAZone.create(zone).offset(day * milliseconds + milliseconds / 2);
  noonOffsets.set(key, offset);
  return day * milliseconds + (minuteOfDay - offset) * 60_000;
}

/** Easter Sunday (Gregorian). Source: Meeus J. (1991) Astronomical Algorithms, chapter 8. */
export function easterSunday(year: number): DayNumber {
  const a = year % 19;
  const b = Math.floor(year / 100);
  const c = year % 100;
  const d = Math.floor(b / 4);
  const e = b % 4;
  const g = Math.floor((8 * b + 13) / 25);
  const h = (19 * a + b - d - g + 15) % 30;
  const i = Math.floor(c / 4);
  const k = c % 4;
  const l = (32 + 2 * e + 2 * i - h - k) % 7;
  const m = Math.floor((a + 11 * h + 22 * l) / 451);
  const month = Math.floor((h + l - 7 * m + 114) / 31);
  return Date.UTC(year, month - 1, ((h + l - 7 * m + 114) % 31) + 1) / milliseconds;
}

const lunar = new Intl.DateTimeFormat('en-u-ca-chinese', { month: 'numeric', day: 'numeric', timeZone: 'UTC' });
/** The first eight days of the Chinese lunar year. */
export function isLunarNewYear(day: DayNumber): boolean {
  const parts = lunar.formatToParts(new Date(day * milliseconds));
  const part = (type: string) => parts.find((it) => it.type === type)?.value;
  return part('month') === '1' && Number(part('day')) <= 8;
}
