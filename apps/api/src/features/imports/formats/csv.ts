import Papa from 'papaparse';
import { FileFault } from '../file-fault.ts';
import { declaredDelimiter, lineBreak } from './delimiter.ts';
import { type Encoding, readText } from './encoding.ts';
import { isBlank, maxCellLength, maxColumns, type RawRow, type RowBatches } from './raw-row.ts';

export interface CsvLayout {
  encoding: Encoding;
  delimiter: string;
}

/** A row that is still open after this many characters means that a quote was never closed. */
const longestRow = 1_000_000;

/**
 * All rows of a delimited text file (RFC 4180, also with other delimiters and line ends), blank ones left out, in batches.
 * Holds one piece of the file at a time. A row whose quotes are malformed carries a fault.
 * Throws `FileFault` for a quote that is never closed, too many columns, or an overlong value.
 */
export async function* readCsv(path: string, layout: CsvLayout, onBytes?: (bytes: number) => void): RowBatches {
  let parser: Papa.Parser | undefined;
  let newline: '\n' | '\r' = '\n';
  let rest = '';
  let line = 1;
  for await (const piece of readText(path, layout.encoding, onBytes)) {
    let text = rest + piece;
    if (!parser) {
      newline = lineBreak(text);
      parser = new Papa.Parser({ delimiter: layout.delimiter, newline });
      if (declaredDelimiter(text)) {
        text = text.slice(text.indexOf('\n') + 1);
        line = 2;
      }
    }
    const { rows, used, nextLine } = parse(parser, newline, text, line, false);
    rest = text.slice(used);
    line = nextLine;
    if (rest.length > longestRow) throw new FileFault('open_quote', `it begins on line ${line}`);
    if (rows.length > 0) yield rows;
  }
  if (!parser || rest === '') return;
  const { rows } = parse(parser, newline, rest, line, true);
  if (rows.length > 0) yield rows;
}

function parse(parser: Papa.Parser, newline: string, text: string, firstLine: number, last: boolean) {
  const result = parser.parse(text, 0, !last) as Papa.ParseResult<string[]>;
  const faulty = new Set(result.errors.map((error) => error.row));
  const rows: RawRow[] = [];
  let line = firstLine;
  for (const [index, cells] of result.data.entries()) {
    const row: RawRow = { line, cells };
    line += 1 + breaksWithin(cells, newline);
    dropCarriageReturn(cells);
    if (isBlank(row)) continue;
    if (cells.length > maxColumns) throw new FileFault('wide', `line ${row.line}`);
    if (faulty.has(index)) row.fault = 'quote';
    rows.push(row);
  }
  return { rows, used: result.meta.cursor, nextLine: line };
}

function breaksWithin(cells: string[], newline: string): number {
  let breaks = 0;
  for (const cell of cells) {
    if (cell.length > maxCellLength) throw new FileFault('long_value', `it begins "${cell.slice(0, 40)}"`);
    for (let at = cell.indexOf(newline); at >= 0; at = cell.indexOf(newline, at + 1)) breaks += 1;
  }
  return breaks;
}

function dropCarriageReturn(cells: string[]): void {
  const last = cells[cells.length - 1]!;
  if (last.endsWith('\r')) cells[cells.length - 1] = last.slice(0, -1);
}
