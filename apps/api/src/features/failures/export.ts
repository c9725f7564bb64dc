import type { Readable } from 'node:stream';
import { veil } from '#api/features/evidence/blind.service.ts';
import type { PlantScope } from '#api/platform/actor.ts';
import type { Cell, Row } from '#api/platform/export/cell.ts';
import { toCsv } from '#api/platform/export/csv.ts';
import { streamRows } from '#api/platform/export/row-stream.ts';
import { sheetRows, toXlsx } from '#api/platform/export/xlsx.ts';
import { problem } from '#api/platform/problems.ts';
import type { ReportRow } from '#contracts/failures.ts';
import { minorDigits } from '#contracts/shared/currency.ts';
import type { Filter } from '#contracts/shared/filter.ts';
import { terms as german } from '#contracts/terms.de.ts';
import { terms as english, type ReportField, type Terms } from '#contracts/terms.en.ts';
import type { Database } from '#db/client.ts';
import { countReports, everyRow, ListRecord } from './list.queries.ts';

const major = (minor: number | null, { currency }: ReportRow['cost']): number | null =>
  minor === null ? null : Number((minor / 10 ** minorDigits(currency)).toFixed(minorDigits(currency)));
/** A vocabulary's label, or nothing where the field is empty. */
const label = (labels: Readonly<Record<string, string>>, word: string | null): Cell =>
  word === null ? null : (labels[word] ?? word);

const columns: Record<ReportField, (row: ReportRow, terms: Terms) => Cell> = {
  number: (row) => row.number,
  plant: (row) => row.plantCode,
  foundOn: (row) => ({ day: row.foundOn }),
  line: (row) => row.lineCode,
  station: (row) => row.station,
  shift: (row) => row.shift,
  found: (row, terms) => terms.stage[row.found],
  source: (row, terms) => terms.source[row.source],
  housing: (row) => row.housingCode,
  terminal: (row) => row.terminalCode,
  wire: (row) => row.wireCode,
  tool: (row) => row.toolCode,
  cavities: (row) => row.cavities.join(' ') || null,
  reelLot: (row) => row.reelLot,
  housingLot: (row) => row.housingLot,
  customer: (row) => row.customerCode,
  effect: (row, terms) => label(terms.effect, row.effect),
  quantityFound: (row) => row.quantityFound,
  quantityInspected: (row) => row.quantityInspected,
  lockState: (row, terms) => terms.lockState[row.lockState],
  disposition: (row, terms) => terms.disposition[row.disposition],
  safety: (row) => (row.safety ? 'x' : null),
  cause: (row, terms) => label(terms.cause, row.cause),
  subCause: (row, terms) => label(terms.subCause, row.subCause),
  origin: (row, terms) => label(terms.stage, row.origin),
  booked: ({ cost }) => major(cost.bookedMinor, cost),
  estimated: ({ cost }) => major(cost.estimatedMinor, cost),
  standard: ({ cost }) => major(cost.standardMinor, cost),
  currency: ({ cost }) => cost.currency,
  photos: (row) => row.photoCount,
  note: (row) => row.note,
};
const fields = Object.keys(columns) as ReportField[];

async function* table(rows: AsyncIterable<ReportRow>, terms: Terms, hidden: ReadonlySet<string>): AsyncGenerator<Row> {
  yield fields.map((field) => terms.reportField[field]);
  for await (const row of rows) yield fields.map((field) => columns[field](veil(row, hidden), terms));
}

/** The filtered list as a file, streamed, in the reader's language; without the causes of reports that are hidden from the reader. */
export async function exportReports(
  db: Database,
  scope: PlantScope,
  { format, ...filter }: Filter & { format: 'csv' | 'xlsx' },
  locale: string,
  hidden: ReadonlySet<string>,
): Promise<Readable> {
  const terms = locale === 'de' ? german : english;
  const { reports } = await countReports(db, scope, filter);
  if (format === 'xlsx' && reports >= sheetRows)
    throw problem(
      'too_large',
      `A sheet holds at most ${sheetRows - 1} reports, and these are ${reports}. Choose CSV, or a narrower filter.`,
    );
  const rows = table(streamRows(db, await everyRow(db, filter, scope), ListRecord), terms, hidden);
  return format === 'csv' ? toCsv(rows, locale) : toXlsx(rows, terms.importKind.failures);
}
