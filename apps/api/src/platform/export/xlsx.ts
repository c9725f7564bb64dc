/** Workbooks of one sheet, written as the rows arrive (ECMA-376 SpreadsheetML, strings inline). */
import { Readable } from 'node:stream';
import { Zip, ZipDeflate } from 'fflate';
import { type Cell, harmless, type Row } from './cell.ts';

/** The most rows a sheet can have, its header included. */
export const sheetRows = 1_048_576;

const head = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const office = 'http://schemas.openxmlformats.org/officeDocument/2006';
const packages = 'http://schemas.openxmlformats.org/package/2006';
const part = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

const parts: Record<string, string> = {
  '[Content_Types].xml': `${head}<Types xmlns="${packages}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${part}.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="${part}.worksheet+xml"/><Override PartName="/xl/styles.xml" ContentType="${part}.styles+xml"/></Types>`,
  '_rels/.rels': `${head}<Relationships xmlns="${packages}/relationships"><Relationship Id="rId1" Type="${office}/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
  'xl/_rels/workbook.xml.rels': `${head}<Relationships xmlns="${packages}/relationships"><Relationship Id="rId1" Type="${office}/relationships/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="${office}/relationships/styles" Target="styles.xml"/></Relationships>`,
  'xl/styles.xml': `${head}<styleSheet xmlns="${main}"><fonts count="2"><font><sz val="11"/><name val="Calibri"/></font><font><b/><sz val="11"/><name val="Calibri"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="3"><xf/><xf numFmtId="14" applyNumberFormat="1"/><xf fontId="1" applyFont="1"/></cellXfs></styleSheet>`,
};
const style = { day: 1, header: 2 };

const escapes: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
/** XML 1.0 has no way to hold most control characters; they are left out. */
const xml = (text: string) =>
  text
    .replaceAll(/[&<>"]/g, (it) => escapes[it]!)
    .replaceAll(/[\p{Cc}\uFFFE\uFFFF]/gu, (it) => (/[\t\n\r]/.test(it) ? it : ''));

/** Days since 1899-12-30, as the 1900 date system counts from March 1900 on. */
const serialOf = (day: string) => Date.parse(`${day}T00:00:00Z`) / 86_400_000 + 25_569;

/** A, B … Z, AA … for a 0-based column. */
const columnName = (column: number): string =>
  (column < 26 ? '' : columnName(Math.floor(column / 26) - 1)) + String.fromCharCode(65 + (column % 26));

function cellXml(cell: Cell, column: number, row: number): string {
  if (cell === null) return '';
  const place = `r="${columnName(column)}${row}"`;
  if (typeof cell === 'number') return `<c ${place}><v>${cell}</v></c>`;
  if (typeof cell === 'object') return `<c ${place} s="${style.day}"><v>${serialOf(cell.day)}</v></c>`;
  const look = row === 1 ? ` s="${style.header}"` : '';
  return `<c ${place} t="inlineStr"${look}><is><t xml:space="preserve">${xml(harmless(cell))}</t></is></c>`;
}

async function* sheetXml(rows: AsyncIterable<Row>): AsyncGenerator<string> {
  yield `${head}<worksheet xmlns="${main}"><sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews><sheetData>`;
  let number = 0;
  for await (const row of rows) {
    number += 1;
    yield `<row r="${number}">${row.map((cell, column) => cellXml(cell, column, number)).join('')}</row>`;
  }
  yield '</sheetData></worksheet>';
}

async function* zipped(rows: AsyncIterable<Row>, sheetName: string): AsyncGenerator<Uint8Array> {
  const ready: Uint8Array[] = [];
  const zip = new Zip((error, chunk) => {
    if (error) throw error;
    ready.push(chunk);
  });
  const add = (name: string) => {
    const file = new ZipDeflate(name, { level: 6 });
    zip.add(file);
    return file;
  };
  const text = new TextEncoder();
  const workbook = `${head}<workbook xmlns="${main}" xmlns:r="${office}/relationships"><sheets><sheet name="${xml(sheetName)}" sheetId="1" r:id="rId1"/></sheets></workbook>`;
  for (const [name, content] of Object.entries({ ...parts, 'xl/workbook.xml': workbook }))
    add(name).push(text.encode(content), true);
  const sheet = add('xl/worksheets/sheet1.xml');
  for await (const piece of sheetXml(rows)) {
    sheet.push(text.encode(piece));
    yield* ready.splice(0);
  }
  sheet.push(new Uint8Array(0), true);
  zip.end();
  yield* ready.splice(0);
}

/** Rows as a workbook; the first row is the header. `sheetName` at most 31 letters. */
export const toXlsx = (rows: AsyncIterable<Row>, sheetName: string): Readable => Readable.from(zipped(rows, sheetName));
