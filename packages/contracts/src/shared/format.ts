/** Numbers, money, dates and weeks as people of one language read them. Pure: locale in, text out. */
import { minorDigits } from './currency.ts';
import type { Locale, Money } from './scalars.ts';

const dayMs = 86_400_000;
const utc = (day: string): Date => new Date(`${day}T00:00:00Z`);
const isoDay = (date: Date): string => date.toISOString().slice(0, 10);

/** `days` after a calendar day, both `YYYY-MM-DD`. */
export const addDays = (day: string, days: number): string => isoDay(new Date(utc(day).getTime() + days * dayMs));
/** Whole days from `from` to `to`. */
export const daysBetween = (from: string, to: string): number => (utc(to).getTime() - utc(from).getTime()) / dayMs;

/** ISO 8601 week of a calendar day. Source: ISO 8601-1, week 1 holds the year's first Thursday. */
export const isoWeek = (day: string): { year: number; week: number } => {
  const date = utc(day);
  const thursday = addDays(day, 3 - ((date.getUTCDay() + 6) % 7));
  const year = Number(thursday.slice(0, 4));
  return { year, week: 1 + Math.floor(daysBetween(`${year}-01-01`, thursday) / 7) };
};

/** Tags with the conventions of each language; English counts in Europe's day-month order. */
const tags: Record<Locale, string> = { en: 'en-GB', de: 'de-DE' };

const formatsOf = (locale: Locale) => {
  const tag = tags[locale];
  const number = (value: number, options: Intl.NumberFormatOptions = {}): string =>
    new Intl.NumberFormat(tag, options).format(value);
  const day = (value: string, options: Intl.DateTimeFormatOptions = { dateStyle: 'medium' }): string =>
    new Intl.DateTimeFormat(tag, { ...options, timeZone: 'UTC' }).format(utc(value));

  const significant = (value: number, digits = 3): string =>
    Math.abs(value) >= 10 ** (digits - 1)
      ? number(value, { maximumFractionDigits: 0 })
      : number(value, { maximumSignificantDigits: digits });

  const chance = (probability: number): string => {
    const text = (share: number) => number(share, { style: 'percent', maximumFractionDigits: 0 });
    if (probability > 0 && probability < 0.005) return `< ${text(0.01)}`;
    return probability < 1 && probability >= 0.995 ? `> ${text(0.99)}` : text(probability);
  };

  const money = ({ amountMinor, currency }: Money): string => {
    const digits = minorDigits(currency);
    return number(amountMinor / 10 ** digits, {
      style: 'currency',
      currency,
      currencyDisplay: 'code',
      minimumFractionDigits: digits,
      maximumFractionDigits: digits,
    });
  };

  return {
    count: (value: number): string => number(value, { maximumFractionDigits: 0 }),
    number,
    significant,
    percent: (share: number, digits = 1): string =>
      number(share, { style: 'percent', minimumFractionDigits: digits, maximumFractionDigits: digits }),
    /** A probability: never shown as certain or impossible when it is only nearly so. */
    chance,
    /** A probability counted from random draws: however they fell, it is neither nothing nor certain. */
    drawn: (probability: number): string => chance(Math.min(0.999, Math.max(0.001, probability))),
    money,
    /** For headlines and axes, where cents would only be noise: EUR 12.3K. */
    moneyShort: ({ amountMinor, currency }: Money): string =>
      number(amountMinor / 10 ** minorDigits(currency), {
        style: 'currency',
        currency,
        currencyDisplay: 'code',
        notation: 'compact',
        maximumSignificantDigits: 3,
        useGrouping: 'always',
      }),
    day,
    /** An instant shown in the given zone, which is the plant's wherever a plant is known. */
    instant: (value: string, timeZone?: string): string =>
      new Intl.DateTimeFormat(tag, { dateStyle: 'medium', timeStyle: 'short', timeZone }).format(new Date(value)),
    /** A half-open period, named by its first and last day. */
    period: (from: string, to: string): string =>
      new Intl.DateTimeFormat(tag, { dateStyle: 'medium', timeZone: 'UTC' }).formatRange(
        utc(from),
        utc(addDays(to, -1)),
      ),
    week: (value: string): string => {
      const { year, week } = isoWeek(value);
      return `${year}-W${String(week).padStart(2, '0')}`;
    },
    /** Relative change with its sign: +12 %. */
    change: (ratio: number): string =>
      number(ratio, {
        style: 'percent',
        maximumFractionDigits: Math.abs(ratio) < 0.1 ? 1 : 0,
        signDisplay: 'exceptZero',
      }),
    list: (items: readonly string[]): string => new Intl.ListFormat(tag).format(items),
  };
};

export type Format = ReturnType<typeof formatsOf>;
const made = new Map<Locale, Format>();

export const formats = (locale: Locale): Format => {
  const known = made.get(locale) ?? formatsOf(locale);
  made.set(locale, known);
  return known;
};
