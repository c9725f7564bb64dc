/** One way to read every accepted format: bytes decide what a file is, never its name. */
import { stat } from 'node:fs/promises';
import type { Layout } from '#contracts/imports.ts';
import { FileFault } from '../file-fault.ts';
import { readCsv } from './csv.ts';
import { detectDelimiter } from './delimiter.ts';
import { detectEncoding, type Encoding, readHead, readText } from './encoding.ts';
import type { RawRow, RowBatches } from './raw-row.ts';
import { listSheets, readXlsx } from './xlsx.ts';

/** What the file seems to be. Throws `FileFault` for anything but text and XLSX. */
export async function detectLayout(path: string): Promise<Layout> {
  const magic = await readHead(path, 8);
  if (magic.length === 0) throw new FileFault('empty');
  if (magic.subarray(0, 4).equals(Buffer.from('PK\x03\x04', 'latin1'))) {
    const sheets = await listSheets(path);
    return { format: 'xlsx', sheets, sheet: sheets[0]! };
  }
  if (magic.equals(Buffer.from('d0cf11e0a1b11ae1', 'hex'))) throw new FileFault('old_workbook');
  const encoding = await detectEncoding(path);
  return { format: 'csv', encoding, delimiter: detectDelimiter(await headText(path, encoding)) };
}

/** Rows of a file in batches, whatever its format. `onShare` is told of progress in pieces that add up to about 1. */
export async function* readRows(path: string, layout: Layout, onShare: (share: number) => void = () => {}): RowBatches {
  if (layout.format === 'xlsx') return yield* readXlsx(path, layout.sheet, onShare);
  const { size } = await stat(path);
  yield* readCsv(path, layout, (bytes) => onShare(bytes / size));
}

/** The first rows that are not blank. */
export async function firstRows(path: string, layout: Layout, count: number): Promise<RawRow[]> {
  const first: RawRow[] = [];
  for await (const batch of readRows(path, layout)) {
    first.push(...batch.slice(0, count - first.length));
    if (first.length === count) break;
  }
  return first;
}

async function headText(path: string, encoding: Encoding): Promise<string> {
  let head = '';
  for await (const piece of readText(path, encoding)) {
    head += piece;
    if (head.length >= 64 * 1024) break;
  }
  return head.slice(0, 64 * 1024);
}
