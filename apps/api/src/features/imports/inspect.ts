/** What can be told about a file from its first rows. */
import type { FieldName, importFields, Reference } from '#contracts/import-fields.ts';
import type { Layout, Mapping } from '#contracts/imports.ts';
import { FileFault } from './file-fault.ts';
import { findHeaderRow } from './formats/header.ts';
import { firstRows } from './formats/open-file.ts';
import { fold, foldCode } from './interpret/fold.ts';
import type { ReferenceRow } from './interpret/references.ts';
import { suggestFields } from './mapping.rules.ts';
import type { SavedMapping, StoredFile } from './stored.ts';

const looked = 300;
const shownLines = 12;
const shownSamples = 5;
const longestSample = 80;

/** `headerLine` null: the row that names the columns is looked for. Throws `FileFault`. */
export async function inspectFile(
  kind: keyof typeof importFields,
  path: string,
  layout: Layout,
  headerLine: number | null,
  references: readonly ReferenceRow[],
): Promise<StoredFile> {
  const rows = await firstRows(path, layout, looked);
  const index =
    headerLine === null ? findHeaderRow(rows.slice(0, 50)) : rows.findIndex(({ line }) => line === headerLine);
  const header = rows[Math.max(0, index)];
  if (!header || rows.length < 2) throw new FileFault('empty');
  const body = rows.slice(Math.max(0, index) + 1);
  const width = Math.max(header.cells.length, ...body.map(({ cells }) => cells.length));
  const texts = (column: number) => body.map(({ cells }) => String(cells[column] ?? '').trim());
  const columns = Array.from({ length: width }, (_, column) => ({
    header: clean(header.cells[column] ?? ''),
    values: texts(column),
  }));
  const known = new Set(
    references.flatMap(({ of, code, name }) => [`${of} ${foldCode(code)}`, `${of} ${foldCode(name)}`]),
  );
  const isReference = (of: Reference, text: string) => known.has(`${of} ${foldCode(text)}`);
  const suggestions = suggestFields(kind, columns, isReference);
  return {
    layout,
    headerLine: header.line,
    firstLines: rows.slice(0, shownLines).map(({ line, cells }) => ({ line, cells: cells.slice(0, 30).map(clean) })),
    columns: columns.map(({ header, values }, column) => ({
      header,
      samples: [...new Set(values.filter((value) => value !== '').map(clean))].slice(0, shownSamples),
      suggestion: suggestions[column] ?? null,
    })),
  };
}

/** What was said about the source's earlier files, for the columns that this file has too; suggestions for the others. */
export function proposeMapping(file: StoredFile, saved: SavedMapping | null, onlyPlant: string | null): Mapping {
  const columns: (FieldName | null)[] = file.columns.map(({ header, suggestion }) => {
    const before = saved?.fieldOf[fold(header)];
    return before === undefined ? suggestion : before;
  });
  const taken = new Set<FieldName>();
  const once = columns.map((field) => (field && !taken.has(field) && taken.add(field) ? field : null));
  const fixed = { ...saved?.fixed };
  if (onlyPlant && !taken.has('plant')) fixed.plant ??= onlyPlant;
  return {
    columns: once,
    fixed,
    dateOrder: saved?.dateOrder ?? {},
    decimalMark: saved?.decimalMark ?? {},
    sameKey: saved?.sameKey ?? null,
  };
}

/** Text that can be shown and stored. */
const clean = (cell: string | number): string =>
  String(cell)
    .replace(/\p{Cc}+/gu, ' ')
    .trim()
    .toWellFormed()
    .slice(0, longestSample);
