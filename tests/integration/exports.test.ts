import { parse } from 'csv-parse/sync';
import readSheet from 'read-excel-file/node';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { terms as german } from '#contracts/terms.de.ts';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import * as make from '#tests/support/master-data.ts';
import { reportBody } from '#tests/support/reports.ts';

let it: TestApp;
let person: Asker;
const dangerous = ['=HYPERLINK("http://x.invalid")', '+1+1', '-2+3', '@SUM(A1)', '\tTAB', '\rCR'];

beforeAll(async () => {
  it = await createTestApp();
  const plant = await make.makePlant(it.db, { code: 'LIS' });
  person = await it.as('manager', [plant.id]);
  const record = (fields: object) => person.post('/api/v1/failures', reportBody(plant.id, fields));
  await record({
    foundOn: '2026-06-09',
    note: 'Semicolon; comma, "quote"\nline two',
    station: '<b>&amp;',
    reelLot: 'Ünïcode 端子',
  });
  const { body } = await record({
    foundOn: '2026-06-08',
    quantityFound: 12,
    sorting: { cause: 'tooling', origin: 'termination' },
  });
  await person.post(`/api/v1/failures/${body.id}/costs`, {
    category: 'parts',
    basis: 'booked',
    incurredOn: '2026-06-08',
    currency: 'EUR',
    amountMinor: -1234,
  });
  const stored = await it.db.prisma.failure.findFirstOrThrow({ where: { id: body.id } });
  for (const [index, note] of dangerous.entries())
    await it.db.prisma.failure.create({
      data: {
        plantId: plant.id,
        id: crypto.randomUUID(),
        number: `X-${index}`,
        reportedAt: stored.reportedAt,
        note,
        foundOn: new Date('2026-06-01'),
        found: 6,
        source: 'line',
        quantityFound: 1,
        station: note,
      },
    });
});
afterAll(() => it.close());

describe('CSV', () => {
  test('is exactly the filtered list, in its order, with every letter', async () => {
    const { status, headers, body } = await person.get('/api/v1/failures/export?format=csv&from=2026-06-08');
    expect(status).toBe(200);
    expect(headers['content-disposition']).toBe('attachment; filename="failures-2026-06-15.csv"');
    const rows: Record<string, string>[] = parse(body, { bom: true, columns: true });
    const { items } = (await person.get('/api/v1/failures?from=2026-06-08')).body;
    expect(rows.map((row) => row.Report)).toEqual(items.map(({ number }: { number: string }) => number));
    expect(rows[0]).toMatchObject({
      'Found on': '2026-06-09',
      'Reel lot': 'Ünïcode 端子',
      Note: 'Semicolon; comma, "quote"\nline two',
      Cause: '',
    });
    expect(rows[1]).toMatchObject({
      Cause: 'Tooling',
      'Booked cost': '-12.34',
      Currency: 'EUR',
      'Quantity found': '12',
    });
  });

  test('never holds a live formula', async () => {
    const { body } = await person.get('/api/v1/failures/export?format=csv&to=2026-06-02');
    const rows: string[][] = parse(body, { bom: true });
    expect(rows).toHaveLength(1 + dangerous.length);
    expect(
      rows
        .slice(1)
        .flat()
        .filter((cell) => /^[=+\-@\t\r]/.test(cell)),
    ).toEqual([]);
    expect(
      rows
        .slice(1)
        .flat()
        .filter((cell) => cell.startsWith("'")),
    ).toHaveLength(2 * dangerous.length);
  });

  test('speaks German with semicolons and decimal commas', async () => {
    const deutsch = await it.as('viewer', undefined, 'de');
    const { body } = await deutsch.get('/api/v1/failures/export?format=csv&from=2026-06-08&to=2026-06-09');
    const [header, row]: string[][] = parse(body, { bom: true, delimiter: ';' });
    expect(header).toEqual(Object.values(german.reportField));
    expect(row?.[header!.indexOf('Gebuchte Kosten')]).toBe('-12,34');
    expect(row).toContain(german.cause.tooling);
  });
});

describe('XLSX', () => {
  const sheetOf = async (query: string) => {
    const answer = await person.get(`/api/v1/failures/export?format=xlsx&${query}`);
    expect(answer.headers['content-type']).toContain('spreadsheetml.sheet');
    return (await readSheet(answer.raw))[0]!.data;
  };

  test('keeps numbers as numbers and days as days', async () => {
    const [header, first, second] = await sheetOf('from=2026-06-08');
    const at = (name: string) => header!.indexOf(name);
    expect(first![at('Found on')]).toEqual(new Date('2026-06-09T00:00:00Z'));
    expect(first![at('Note')]).toBe('Semicolon; comma, "quote"\nline two');
    expect(first![at('Station')]).toBe('<b>&amp;');
    expect(second![at('Quantity found')]).toBe(12);
    expect(second![at('Booked cost')]).toBe(-12.34);
  });

  test('never holds a live formula, and no cell that a copy could bring to life', async () => {
    const rows = await sheetOf('to=2026-06-02');
    const texts = rows
      .slice(1)
      .flat()
      .filter((cell) => typeof cell === 'string');
    expect(texts.filter((cell) => /^[=+\-@\t\r]/.test(cell as string))).toEqual([]);
    expect(texts.filter((cell) => String(cell).startsWith("'"))).toHaveLength(2 * dangerous.length);
  });
});

test('an export that selects nothing has its header', async () => {
  const { body } = await person.get('/api/v1/failures/export?format=csv&to=2000-01-02');
  expect(parse(body, { bom: true })).toHaveLength(1);
});
