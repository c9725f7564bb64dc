/** Whole reporting weeks; calendar days as `YYYY-MM-DD`, periods half-open. Pure: today is an argument. */
import { addDays } from '#contracts/shared/format.ts';

export interface Period {
  readonly from: string;
  readonly to: string;
}

/** The calendar day of an instant in an IANA zone. */
export const dayIn = (zone: string, at: Date): string =>
  new Intl.DateTimeFormat('en-CA', { timeZone: zone, dateStyle: 'short' }).format(at);

/** First day of the reporting week that holds `day`; `weekStart` 1 = Monday … 7 = Sunday. */
export const startOfWeek = (day: string, weekStart = 1): string => {
  const weekday = ((new Date(`${day}T00:00:00Z`).getUTCDay() + 6) % 7) + 1;
  return addDays(day, -((weekday - weekStart + 7) % 7));
};

/** The last `weeks` full weeks before the week that holds `today`. */
export const fullWeeks = (today: string, weeks: number, weekStart = 1): Period => {
  const to = startOfWeek(today, weekStart);
  return { from: addDays(to, -7 * weeks), to };
};
