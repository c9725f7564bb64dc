import type { Locale } from '#contracts/shared/scalars.ts';

/** Name of a day of the week, 1 = Monday … 7 = Sunday. 2024-01-01 was a Monday. */
export const weekdayName = (day: number, locale: Locale): string =>
  new Intl.DateTimeFormat(locale, { weekday: 'long', timeZone: 'UTC' }).format(new Date(Date.UTC(2024, 0, day)));
