/** Build months as the page shows them. Pure. */
import type { BuildMonthRow } from '#contracts/maturity.ts';
import { addDays, type Format } from '#contracts/shared/format.ts';

export const million = 1_000_000;

export const monthText = (format: Format, month: string): string =>
  format.day(`${month}-01`, { month: 'short', year: 'numeric' });

/** The day after a month that lies so many months after another. */
export function endOfMonth(month: string, later: number): string {
  const number = Number(month.slice(0, 4)) * 12 + Number(month.slice(5)) - 1 + later + 1;
  return `${Math.floor(number / 12)}-${String((number % 12) + 1).padStart(2, '0')}-01`;
}

export const lastDayOf = (month: string): string => addDays(endOfMonth(month, 0), -1);

/** Reports so far per million units built; null where production is not known. */
export const rawPerMillion = ({ cumulative, produced }: BuildMonthRow): number | null =>
  produced ? ((cumulative.at(-1) ?? 0) * million) / produced : null;

/** Opens the reports of a build month that were found up to an age in months. */
export const cellAddress = ({ filter, month }: BuildMonthRow, age: number): string => {
  const search = new URLSearchParams(filter);
  search.set('to', endOfMonth(month, age));
  return `/failures?${search}`;
};
