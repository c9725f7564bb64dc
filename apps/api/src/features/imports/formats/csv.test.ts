import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import iconv from 'iconv-lite';
import { afterAll, describe, expect, test } from 'vitest';
import { encodings } from '#contracts/imports.ts';
import { readCsv } from './csv.ts';
import { detectDelimiter } from './delimiter.ts';
import { detectEncoding, type Encoding } from './encoding.ts';
import type { RawRow } from './raw-row.ts';

const folder = mkdtempSync(join(tmpdir(), 'escape-ledger-csv-'));
afterAll(() => rmSync(folder, { recursive: true }));
const path = join(folder, 'list.csv');

async function read(content: string | Buffer, delimiter = ';', encoding: Encoding = 'utf-8'): Promise<RawRow[]> {
  writeFileSync(path, content);
  const rows: RawRow[] = [];
  for await (const batch of readCsv(path, { delimiter, encoding })) rows.push(...batch);
  return rows;
}
/** RFC 4180: a value that holds the delimiter, a quote or a line end stands in quotes, its quotes doubled. */
const quoted = (value: string, delimiter: string) =>
  /["\r\n]/.test(value) || value.includes(delimiter) ? `"${value.replaceAll('"', '""')}"` : value;

describe('rows of a text file', () => {
  test('come back as they were written, whatever delimiter, line end and quoting', async () => {
    const cell = fc.stringMatching(/^[a-zäß0-9 ;,|\t"\n]{0,12}$/u).map((text) => `x${text}x`);
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.array(cell, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 20 }),
        fc.constantFrom(',', ';', '\t', '|'),
        fc.constantFrom('\n', '\r\n'),
        async (rows, delimiter, end) => {
          const text = rows.map((row) => row.map((value) => quoted(value, delimiter)).join(delimiter)).join(end);
          const back = await read(text, delimiter);
          expect(back.map(({ cells }) => cells)).toEqual(rows);
          let line = 1;
          for (const [at, row] of rows.entries()) {
            expect(back[at]!.line).toBe(line);
            line += 1 + row.join('').split('\n').length - 1;
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('keep their lines over pieces of the file, quoted line ends and blank lines', async () => {
    const row = `a;"two\nlines";${'y'.repeat(60)}\n\n`;
    const rows = await read(row.repeat(12_000));
    expect(rows).toHaveLength(12_000);
    expect(rows.at(-1)).toMatchObject({ line: 1 + 3 * 11_999, cells: ['a', 'two\nlines', 'y'.repeat(60)] });
  });

  test.each([
    ['a;b\n"1"x;2\n3;4\n', [[1], [2, 'quote']]],
    ['a;b\n1;"2\n3;4', [[1], [2, 'quote']]],
  ])('that cannot be told apart are marked: %j', async (text, marks) => {
    const rows = await read(text);
    expect(rows.slice(0, 2).map(({ line, fault }) => (fault ? [line, fault] : [line]))).toEqual(marks);
  });

  test('end in a fault where a quote is never closed in a large file', async () => {
    await expect(read(`a;b\n1;"${'x;y\n'.repeat(400_000)}`)).rejects.toMatchObject({
      code: 'open_quote',
      place: 'it begins on line 2',
    });
  });
});

describe('what a file is written in', () => {
  test.each(encodings)('%s is told from the bytes', async (encoding) => {
    writeFileSync(path, iconv.encode('Gehäuse;Größe\r\nä;ß\r\n', encoding));
    expect(await detectEncoding(path)).toBe(encoding);
  });
  test('a character cut by the end of a piece is still UTF-8', async () => {
    writeFileSync(path, `${'a'.repeat(256 * 1024 - 1)}ä€😀`);
    expect(await detectEncoding(path)).toBe('utf-8');
  });
  test('one byte that is no UTF-8 at the very end makes it Windows-1252', async () => {
    writeFileSync(path, Buffer.concat([Buffer.from('a'.repeat(600_000)), Buffer.from([0xe4])]));
    expect(await detectEncoding(path)).toBe('windows-1252');
  });
  test.each([
    ['a,b;c\n1,5;2\n2,5;3\n', ';'],
    ['a,b,c\n1,"x;y;z",3\n', ','],
    ['a\tb\n1,5\t2,5\n', '\t'],
    ['sep=|\na|b\n', '|'],
    ['only one column\n1\n', ','],
  ])('the delimiter of %j is %j', (text, delimiter) => expect(detectDelimiter(text)).toBe(delimiter));
});
