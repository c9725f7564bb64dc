import { dateOrders } from '#contracts/imports.ts';
import type { Cell } from '../formats/raw-row.ts';
import { type DateOrder, readingsOf } from './date.ts';

/** How many different date texts of a column each order can read, and how many there were that leave a choice or exclude one. */
export interface DateEvidence {
  values: number;
  fits: Record<DateOrder, number>;
  /** One value that several orders read differently, to show when asking. */
  example: string | null;
}

export const noDateEvidence = (): DateEvidence => ({ values: 0, fits: { ymd: 0, dmy: 0, mdy: 0 }, example: null });

/** Counts a value of the column. What no order can read counts for nothing: the reader refuses it later. */
export function observeDate(evidence: DateEvidence, cell: Cell): void {
  if (typeof cell === 'number') return;
  const readings = readingsOf(cell);
  const fitting = dateOrders.filter((order) => typeof readings[order] === 'object');
  if (fitting.length === 0) return;
  if (fitting.length === dateOrders.length && readings.ymd === readings.dmy && readings.dmy === readings.mdy) return;
  evidence.values += 1;
  for (const order of fitting) evidence.fits[order] += 1;
  if (fitting.length > 1) evidence.example ??= cell;
}

/**
 * The one order that reads every value. 'ask' where more than one does, or none does (the column mixes orders); the offered
 * choices are those that read the most values, so that a person can decide and the rest is refused.
 */
export function decideOrder({ values, fits }: DateEvidence): { order: DateOrder } | { ask: DateOrder[] } {
  if (values === 0) return { order: 'ymd' };
  const complete = dateOrders.filter((order) => fits[order] === values);
  if (complete.length === 1) return { order: complete[0]! };
  return { ask: complete.length > 1 ? complete : dateOrders.filter((order) => fits[order] > 0) };
}
