import { FileFault } from '../file-fault.ts';
import type { RowBatches } from './raw-row.ts';
import { type Archive, openArchive } from './xlsx/archive.ts';
import { readSharedStrings } from './xlsx/shared-strings.ts';
import { readSheet } from './xlsx/sheet.ts';
import { readDateStyles } from './xlsx/styles.ts';
import { readWorkbook } from './xlsx/workbook.ts';

/** Names of the visible sheets, in the workbook's order. Throws `FileFault` where the file is no workbook. */
export async function listSheets(path: string): Promise<string[]> {
  return withArchive(path, async (archive) => (await readWorkbook(archive)).sheets.map(({ name }) => name));
}

/** Rows of one sheet; numbers stay numbers, cells with a date style become ISO text. `onShare` is told of progress, 0 to 1 in all. */
export async function* readXlsx(path: string, sheet: string, onShare?: (share: number) => void): RowBatches {
  const archive = await openArchive(path);
  try {
    const { sheets, from1904 } = await readWorkbook(archive);
    const chosen = sheets.find(({ name }) => name === sheet);
    if (!chosen) throw new FileFault('no_sheet');
    const [strings, isDate] = [await readSharedStrings(archive), await readDateStyles(archive)];
    yield* readSheet(archive, chosen.part, { strings, isDate, from1904 }, onShare);
  } finally {
    archive.close();
  }
}

async function withArchive<Result>(path: string, work: (archive: Archive) => Promise<Result>): Promise<Result> {
  const archive = await openArchive(path);
  try {
    return await work(archive);
  } finally {
    archive.close();
  }
}
