import { afterAll, beforeAll, expect, test } from 'vitest';
import { refreshFigures } from '#api/features/failures/figures.ts';
import { sql } from '#db/sql.ts';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import * as make from '#tests/support/master-data.ts';
import { reportBody } from '#tests/support/reports.ts';

let it: TestApp;
let plant: Awaited<ReturnType<typeof make.makePlant>>;
let inspector: Asker;

beforeAll(async () => {
  it = await createTestApp();
  plant = await make.makePlant(it.db, { currency: 'MXN' });
  await make.makeStages(it.db, plant.id);
  await make.makeCostRate(it.db, plant.id, 18_000);
  await make.makeCostRate(it.db, plant.id, 24_000, { validFrom: new Date('2026-06-01') });
  await make.makeExchangeRate(it.db, 'EUR', 'MXN', '20.5', '2026-01-01');
  await make.makeExchangeRate(it.db, 'EUR', 'MXN', '21', '2026-06-01');
  await make.makeExchangeRate(it.db, 'EUR', 'USD', '1.1', '2026-02-01');
  await make.makeStandardCost(it.db, plant.id, 6, 'reworked', 5000);
  await make.makeStandardCost(it.db, plant.id, 6, 'reworked', 7000, '2026-06-01');
  await make.makeStandardCost(it.db, plant.id, 5, 'reworked', 2000);
  inspector = await it.as('inspector', [plant.id]);
});
afterAll(() => it.close());

const record = async (fields = {}) => (await inspector.post('/api/v1/failures', reportBody(plant.id, fields))).body;
const item = (fields: object) => ({
  category: 'parts',
  basis: 'booked',
  incurredOn: '2026-05-31',
  currency: 'MXN',
  ...fields,
});
const add = (id: string, fields: object) => inspector.post(`/api/v1/failures/${id}/costs`, item(fields));

test('booked and estimated items stay apart, in the plant’s currency', async () => {
  const { id } = await record();
  await add(id, { amountMinor: 12_345 });
  await add(id, { amountMinor: 5_000, basis: 'estimated', category: 'sorting' });
  const { status, body } = await add(id, { amountMinor: -345 });
  expect(status).toBe(201);
  expect(body.cost).toEqual({ currency: 'MXN', bookedMinor: 12_000, estimatedMinor: 5_000, standardMinor: null });
  const { body: less } = await inspector.delete(`/api/v1/failures/${id}/costs/${body.costItems[0].id}`);
  expect(less.cost).toMatchObject({ bookedMinor: -345, estimatedMinor: 5_000 });
  expect((await inspector.delete(`/api/v1/failures/${id}/costs/${body.costItems[0].id}`)).status).toBe(404);
  const audit = await it.db.prisma.auditEntry.findMany({ where: { entityId: id }, orderBy: { id: 'asc' } });
  expect(audit.map(({ action }) => action)).toEqual([
    'recorded',
    'cost added',
    'cost added',
    'cost added',
    'cost removed',
  ]);
});

test('by hand: 90 minutes at 180.00 an hour are 270.00, at the rate of the day', async () => {
  const { id } = await record();
  const before = await add(id, { category: 'rework_labour', minutes: 90 });
  expect(before.body.costItems[0]).toMatchObject({ amountMinor: 27_000, minutes: 90, rateOn: null });
  const after = await add(id, { category: 'sorting', minutes: 90, incurredOn: '2026-06-01' });
  expect(after.body.costItems[1].amountMinor).toBe(36_000);
});

test('by hand: 10.00 EUR are 205.00 MXN in May and 210.00 in June', async () => {
  const { id } = await record();
  await add(id, { currency: 'EUR', amountMinor: 1_000 });
  const { body } = await add(id, { currency: 'EUR', amountMinor: 1_000, incurredOn: '2026-06-01' });
  expect(body.costItems).toMatchObject([
    { plantMinor: 20_500, rateOn: '2026-01-01' },
    { plantMinor: 21_000, rateOn: '2026-06-01' },
  ]);
});

test('by hand, over the group’s currency: 11.00 USD / 1.1 × 20.5 are 205.00 MXN, at the older date', async () => {
  const { id } = await record();
  const { body } = await add(id, { currency: 'USD', amountMinor: 1_100 });
  expect(body.costItems[0]).toMatchObject({ plantMinor: 20_500, rateOn: '2026-01-01' });
});

test('a missing rate says which one to enter and changes nothing', async () => {
  const report = await record();
  const answers = [
    await add(report.id, { currency: 'JPY', amountMinor: 100 }),
    await add(report.id, { currency: 'EUR', amountMinor: 100, incurredOn: '2025-12-31' }),
    await add(report.id, { category: 'line_stop', minutes: 5 }),
  ];
  expect(answers.map(({ status, body }) => [status, body.code])).toEqual(answers.map(() => [422, 'missing_rate']));
  expect(answers[0]?.body.detail).toContain('JPY');
  expect(answers[1]?.body.detail).toContain('2025-12-31');
  expect(answers[2]?.body.detail).toContain('line-stop rate');
  expect((await inspector.get(`/api/v1/failures/${report.id}`)).body).toEqual(report);
});

test('an amount or minutes, of the right kind and size', async () => {
  const { id } = await record();
  for (const fields of [
    {},
    { amountMinor: 1, minutes: 1 },
    { minutes: 5 },
    { amountMinor: 1.5 },
    { amountMinor: 1e15 },
    { amountMinor: 1, currency: 'DEM' },
    { category: 'sorting', minutes: 5, currency: 'EUR' },
    { amountMinor: 1e12, currency: 'EUR' },
  ])
    expect([400, 422]).toContain((await add(id, fields)).status);
  expect((await inspector.get(`/api/v1/failures/${id}`)).body.costItems).toEqual([]);
});

test('ten items at once are all in the sum', async () => {
  const { id } = await record();
  await Promise.all(Array.from({ length: 10 }, () => add(id, { amountMinor: 7 })));
  expect((await inspector.get(`/api/v1/failures/${id}`)).body.cost.bookedMinor).toBe(70);
});

test('derived figures follow the standard cost of the day found, and its change', async () => {
  const engineer = await it.as('engineer', [plant.id]);
  const may = reportBody(plant.id, {
    foundOn: '2026-05-30',
    disposition: 'reworked',
    quantityFound: 4,
    sorting: { cause: 'partial_seat', origin: 'insertion' },
  });
  const { body: report } = await engineer.post('/api/v1/failures', may);
  expect(report).toMatchObject({ gatesPassed: 1, cost: { standardMinor: 20_000 } });
  const stored = () => it.db.prisma.failure.findFirstOrThrow({ where: { id: report.id } });
  expect(await stored()).toMatchObject({ gate: 5, gateMinor: 8_000n });
  const june = await record({ foundOn: '2026-06-02', disposition: 'reworked' });
  expect(june.cost.standardMinor).toBe(7_000);
  await make.makeStandardCost(it.db, plant.id, 6, 'reworked', 9_000, '2026-05-15');
  const changed = await it.db.prisma.$transaction((tx) => refreshFigures(tx, sql`f.plant_id = ${plant.id}::uuid`));
  expect(changed).toBe(1);
  expect((await stored()).standardMinor).toBe(36_000n);
});
