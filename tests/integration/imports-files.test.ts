/** Every file of tests/imports goes through the service: the accepted ones to the same two reports, the rejected ones to a problem. */
import { readdirSync, readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { check, commit, upload } from '#tests/support/imports.ts';
import { makePlant } from '#tests/support/master-data.ts';
import { number, shared, sheetXml, text, workbook } from '#tests/support/workbook.ts';

const folder = new URL('../imports/', import.meta.url);
const filesIn = (name: string) =>
  readdirSync(new URL(`${name}/`, folder)).map(
    (file) => [file, readFileSync(new URL(`${name}/${file}`, folder))] as const,
  );

let service: TestApp;
let engineer: Asker;
beforeAll(async () => {
  service = await createTestApp();
  await makePlant(service.db, { code: 'ALFA' });
  engineer = await service.as('engineer');
});
afterAll(() => service.close());

const reports = async () => {
  const rows = await service.db.prisma.failure.findMany({ orderBy: { externalRef: 'asc' } });
  return rows.map(({ externalRef, foundOn, found, source, quantityFound, cause, note }) => ({
    externalRef,
    foundOn: foundOn.toISOString().slice(0, 10),
    found,
    source,
    quantityFound,
    cause,
    note: note?.replace(/\r\n?/g, '\n'),
  }));
};
const expected = [
  {
    externalRef: 'A-1',
    foundOn: '2026-05-13',
    found: 6,
    source: 'line',
    quantityFound: 2,
    cause: 'tooling',
    note: 'Gehäuse "oben"',
  },
  {
    externalRef: 'A-2',
    foundOn: '2026-05-14',
    found: 6,
    source: 'customer',
    quantityFound: 1,
    cause: 'adhesive',
    note: 'zwei\nZeilen',
  },
];

const heads = ['Meldung', 'Werk', 'Gefunden am', 'Stufe', 'Quelle', 'Anzahl', 'Ursache', 'Bemerkung'];
const letters = 'ABCDEFGH';
const title = `<row r="1">${text('A1', 'Fehlerliste 2026')}</row><row r="3">${text('A3', 'Werk Alfa')}</row>`;
const header = `<row r="5">${heads.map((_, at) => shared(`${letters[at]}5`, at)).join('')}</row>`;
const body = (first: number) =>
  `<row r="6">${text('A6', 'A-1')}${text('B6', 'ALFA')}${number('C6', first, 1)}${text('D6', 'EOL')}${text('E6', 'Linie')}${number('F6', 2)}${text('G6', 'Werkzeug')}${text('H6', 'Gehäuse &quot;oben&quot;')}</row>
   <row r="7">${text('A7', 'A-2')}${text('B7', 'ALFA')}${number('C7', first + 1)}${text('D7', 'EOL')}${text('E7', 'Kunde')}${number('F7', 1)}${text('G7', 'Kleber')}<c r="H7" t="inlineStr"><is><r><t>zwei</t></r><r><t xml:space="preserve">_x000A_Zeilen</t></r></is></c></row>`;
const workbooks = [
  [
    'workbook with title rows, shared strings and days from 1900',
    workbook({ List: sheetXml(title + header + body(46_155)) }, { strings: heads }),
  ],
  [
    'workbook with days from 1904',
    workbook(
      { List: sheetXml(header + body(46_155 - 1462)).replace('r="C7" s="0"', 'r="C7" s="1"') },
      { strings: heads, from1904: true },
    ),
  ],
] as const;

describe('an accepted file', () => {
  test.each([...filesIn('accepted'), ...workbooks])('%s', async (_name, content) => {
    await service.db.pool.query('truncate failure, cause_change, report_counter cascade');
    const { status, body } = await upload(engineer, content, { source: _name });
    expect(status, JSON.stringify(body)).toBe(201);
    const checked = await check(engineer, body);
    expect(checked).toMatchObject({ state: 'checked', questions: [], unknown: [], outcome: { added: 2, refused: 0 } });
    expect(await commit(engineer, checked)).toMatchObject({ state: 'committed', trouble: null });
    expect(await reports()).toEqual(expected);
  });
});

describe('a rejected file', () => {
  test.each(filesIn('rejected'))('%s', async (_name, content) => {
    const { status, body } = await upload(engineer, content);
    expect(body).toMatchObject({ status: 422, code: 'unreadable_file' });
    expect(status).toBe(422);
  });
  test('leaves nothing behind', async () => {
    const before = await service.db.prisma.importJob.count();
    await upload(engineer, '');
    expect(await service.db.prisma.importJob.count()).toBe(before);
    const left = readdirSync(`${service.dataDir}/imports`).filter((name) => name.endsWith('.upload'));
    expect(left).toEqual([]);
  });
});
