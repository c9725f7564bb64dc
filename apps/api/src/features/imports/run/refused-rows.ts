/** Refused rows as a CSV file, written as they come; counts and the first few are kept for the screen. */
import { once } from 'node:events';
import { createWriteStream } from 'node:fs';
import { stringify } from 'csv-stringify/sync';
import { harmless } from '#api/platform/export/cell.ts';
import { importTerms } from '#contracts/import-terms.ts';
import type { RefusalCode, RefusedRow } from '#contracts/imports.ts';
import type { Locale } from '#contracts/shared/scalars.ts';
import { showable } from '../interpret/text.ts';

const mostShown = 50;
const longestValue = 200;
const flushAt = 500;

export interface RefusedRows {
  /** All faults of one row, or of several rows that are refused together. */
  add(faults: readonly RefusedRow[], rows?: number): void;
  /** Lets the disk keep up; to be awaited now and then. */
  flush(): Promise<void>;
  end(): Promise<RefusedTotals>;
}
export interface RefusedTotals {
  rows: number;
  reasons: { reason: RefusalCode; rows: number }[];
  first: RefusedRow[];
}

/** `begun`: the totals of a file to go on with. */
export function writeRefusedRows(path: string, locale: Locale, begun?: RefusedTotals): RefusedRows {
  const terms = importTerms[locale];
  const file = createWriteStream(path, { flags: begun ? 'a' : 'w' });
  const reasons = new Map(begun?.reasons.map(({ reason, rows }) => [reason, rows]));
  const first = [...(begun?.first ?? [])];
  let rows = begun?.rows ?? 0;
  let headed = Boolean(begun);
  let waiting: string[][] = begun
    ? []
    : [[terms.refused.line, terms.refused.column, terms.refused.value, terms.refused.reason]];
  const text = () =>
    stringify(waiting, { delimiter: locale === 'de' ? ';' : ',', record_delimiter: '\r\n', bom: !headed });
  const flush = async () => {
    if (waiting.length === 0) return;
    const chunk = text();
    waiting = [];
    headed = true;
    if (!file.write(chunk)) await once(file, 'drain');
  };
  return {
    add(faults, count = 1) {
      rows += count;
      for (const reason of new Set(faults.map((fault) => fault.reason)))
        reasons.set(reason, (reasons.get(reason) ?? 0) + count);
      for (const fault of faults) {
        const short = { ...fault, value: showable(fault.value).slice(0, longestValue) };
        if (first.length < mostShown) first.push(short);
        waiting.push([
          String(fault.line),
          harmless(fault.column),
          harmless(short.value),
          fault.note ? `${terms.reason[fault.reason]} (${fault.note})` : terms.reason[fault.reason],
        ]);
      }
    },
    flush: async () => {
      if (waiting.length >= flushAt) await flush();
    },
    async end() {
      await flush();
      file.end();
      await once(file, 'close');
      return {
        rows,
        first,
        reasons: [...reasons].map(([reason, count]) => ({ reason, rows: count })).sort((a, b) => b.rows - a.rows),
      };
    },
  };
}
