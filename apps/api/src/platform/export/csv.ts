import { Readable } from 'node:stream';
import { stringify } from 'csv-stringify';
import { type Cell, harmless, type Row } from './cell.ts';

const texts = (decimal: string) => (cell: Cell) => {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell).replace('.', decimal);
  return typeof cell === 'string' ? harmless(cell) : cell.day;
};

/**
 * Rows as CSV (RFC 4180, UTF-8 with a byte-order mark so that spreadsheet programs read every letter): commas and decimal
 * points, or, in German, semicolons and decimal commas.
 */
export function toCsv(rows: AsyncIterable<Row>, locale: string): Readable {
  const german = locale === 'de';
  const toText = texts(german ? ',' : '.');
  const lines = Readable.from(rows).map((row: Row) => row.map(toText));
  return lines.compose(stringify({ bom: true, delimiter: german ? ';' : ',', record_delimiter: '\r\n' })) as Readable;
}
