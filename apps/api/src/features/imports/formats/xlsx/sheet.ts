import { FileFault } from '../../file-fault.ts';
import { type Cell, isBlank, maxCellLength, maxColumns, type RawRow, type RowBatches } from '../raw-row.ts';
import type { Archive } from './archive.ts';
import { serialDate } from './serial-date.ts';
import { RichText, type SharedStrings } from './shared-strings.ts';
import type { DateStyles } from './styles.ts';
import { parseXml } from './xml.ts';

export interface SheetContext {
  strings: SharedStrings;
  isDate: DateStyles;
  from1904: boolean;
}

/** Rows of one worksheet, blank ones left out, in batches. A merged area holds its value in its first cell only. */
export async function* readSheet(
  archive: Archive,
  part: string,
  context: SheetContext,
  onShare?: (share: number) => void,
): RowBatches {
  let batch: RawRow[] = [];
  let row: RawRow = { line: 0, cells: [] };
  let column = -1;
  let type = 'n';
  let style = 0;
  let value = '';
  let inValue = false;
  const inline = new RichText();
  const handler = {
    open(name: string, attributes: Record<string, string>) {
      if (name === 'c') {
        column = attributes.r ? columnOf(attributes.r) : column + 1;
        if (column >= maxColumns) throw new FileFault('wide', `row ${row.line}`);
        type = attributes.t ?? 'n';
        style = Number(attributes.s ?? 0);
        value = '';
      } else if (name === 'v') inValue = true;
      else if (name === 'row') {
        row = { line: attributes.r ? Number(attributes.r) : row.line + 1, cells: [] };
        column = -1;
      } else if (type === 'inlineStr') inline.open(name);
    },
    text(piece: string) {
      if (inValue) value += piece;
      else inline.piece(piece);
    },
    close(name: string) {
      if (name === 'c') {
        const text = type === 'inlineStr' ? inline.take() : value;
        if (text.length > maxCellLength) throw new FileFault('long_value', `row ${row.line}`);
        if (text !== '') put(row.cells, column, cellOf(text, type, style, context));
      } else if (name === 'v') inValue = false;
      else if (name === 'row') {
        if (!isBlank(row)) batch.push(row);
      } else inline.close(name);
    },
  };
  for await (const _ of parseXml(archive.read(part, onShare), handler)) {
    if (batch.length === 0) continue;
    yield batch;
    batch = [];
  }
}

function cellOf(text: string, type: string, style: number, { strings, isDate, from1904 }: SheetContext): Cell {
  if (type === 's') return strings.at(Number(text));
  if (type === 'b') return text === '1' ? 'true' : 'false';
  if (type !== 'n') return text;
  const number = Number(text);
  if (Number.isNaN(number)) return text;
  return isDate(style) ? (serialDate(number, from1904) ?? number) : number;
}

function put(cells: Cell[], column: number, cell: Cell): void {
  while (cells.length < column) cells.push('');
  cells[column] = cell;
}

/** 0-based column of a reference such as `AB12`. */
function columnOf(reference: string): number {
  let column = 0;
  for (let at = 0; at < reference.length; at += 1) {
    const letter = reference.charCodeAt(at) - 64;
    if (letter < 1 || letter > 26) break;
    column = column * 26 + letter;
  }
  return column - 1;
}
