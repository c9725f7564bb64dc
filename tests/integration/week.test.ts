import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Week } from '#contracts/analyses.ts';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { addProduction, addReports } from '#tests/support/facts.ts';
import * as make from '#tests/support/master-data.ts';

let it: TestApp;
let viewer: Asker;
let plant: string;

beforeAll(async () => {
  it = await createTestApp({ now: '2026-06-17T10:00:00Z' });
  plant = (await make.makePlant(it.db, { code: 'LIS', currency: 'EUR' })).id;
  await make.makeStages(it.db, plant);
  await make.makeTool(it.db, plant, { cycleCount: 900, serviceInterval: 500, servicedAtCount: 400 });
  await make.makeTool(it.db, plant, { cycleCount: 899, serviceInterval: 500, servicedAtCount: 400 });
  await addReports(it.db, [
    {
      plantId: plant,
      foundOn: '2026-06-09',
      cause: 'tooling',
      origin: 2,
      found: 6,
      quantityFound: 2,
      costs: [{ minor: 900 }],
    },
    {
      plantId: plant,
      foundOn: '2026-06-10',
      source: 'field',
      found: 10,
      safety: true,
      costs: [{ minor: 40_000 }],
      number: 'F-1',
    },
    {
      plantId: plant,
      foundOn: '2026-06-10',
      cause: 'tooling',
      origin: 2,
      found: 2,
      proof: 'seen',
      disposition: 'scrapped',
    },
    { plantId: plant, foundOn: '2026-06-03', cause: 'handling', origin: 3, found: 6 },
    { plantId: plant, foundOn: '2026-03-03', source: 'customer', found: 9 },
    { plantId: plant, foundOn: '2026-06-15', source: 'customer', found: 9 },
  ]);
  await addProduction(it.db, [
    { plantId: plant, day: '2026-06-09', units: 100, terminals: 10_000 },
    { plantId: plant, day: '2026-06-03', units: 100, terminals: 8_000 },
  ]);
  viewer = await it.as('viewer');
});
afterAll(() => it.close());

const read = async (query = ''): Promise<Week> => (await viewer.get(`/api/v1/week${query}`)).body;
const headline = (week: Week, key: string) => week.headlines.find((it) => it.key === key)!;

test('the last full week against the one before', async () => {
  const week = await read();
  expect(week.period).toEqual({ from: '2026-06-08', to: '2026-06-15' });
  expect(week.compared).toEqual({ from: '2026-06-01', to: '2026-06-08' });
  expect(headline(week, 'reports')).toMatchObject({ figure: { value: 3 }, previous: { value: 1 } });
  // 3 reports in 10 000 against 1 in 8 000
  expect(headline(week, 'reports').change).toMatchObject({
    ratio: expect.closeTo(2.4, 9),
    basis: 'rate',
    verdict: 'within_noise',
  });
  // 4 terminals in 10 000
  expect(headline(week, 'dpmo').figure.value).toBeCloseTo(400, 9);
  expect(headline(week, 'booked').figure.value).toBe(40_900);
  expect(headline(week, 'escaped').figure.value).toBe(1);
  expect(headline(week, 'outside').figure.value).toBe(1);
  expect(week.topCauses.map(({ cause, reports }) => [cause, reports])).toEqual([
    ['tooling', 2],
    [null, 1],
  ]);
  expect(week.costliest.map(({ number, bookedMinor }) => [number, bookedMinor])[0]).toEqual(['F-1', 40_000]);
});

test('any day chooses its week', async () => {
  const week = await read('?start=2026-06-07');
  expect(week.period).toEqual({ from: '2026-06-01', to: '2026-06-08' });
  expect(headline(week, 'reports').figure.value).toBe(1);
});

test('decisions look at everything open at the end of the week, gaps at the week', async () => {
  const { decisions, gaps } = await read();
  expect(Object.fromEntries(decisions.map(({ kind, count }) => [kind, count]))).toEqual({
    safety_unsorted: 1,
    outside_unsorted: 2,
    costly_unsorted: 1,
    disposition_pending: 4,
    tool_service_due: 1,
  });
  expect(gaps.map(({ kind, count, of }) => [kind, count, of])).toEqual([
    ['no_cause', 1, 3],
    ['no_origin', 1, 3],
    ['no_evidence', 2, 3],
    ['no_cost', 1, 3],
    ['no_production', 1, 2],
  ]);
});

test('every link to reports lists what it counts', async () => {
  const week = await read(`?plant=${plant}`);
  for (const { link, count } of [...week.decisions, ...week.gaps]) {
    if (!link.startsWith('/failures?')) continue;
    const { body } = await viewer.get(link.replace('/failures?', '/api/v1/failures/count?'));
    expect([link, body.reports]).toEqual([link, count]);
  }
});

test('the tools due for service are those that the link lists', async () => {
  const { decisions } = await read(`?plant=${plant}`);
  const due = decisions.find(({ kind }) => kind === 'tool_service_due')!;
  const { body } = await viewer.get(due.link.replace('/master-data/', '/api/v1/'));
  expect(body.items).toHaveLength(due.count);
  expect(due.count).toBe(1);
});

test('a week without anything says so', async () => {
  const week = await read('?start=2020-01-01');
  expect(headline(week, 'dpmo').figure).toMatchObject({ value: null, reason: 'no_production' });
  expect(headline(week, 'reports').change).toMatchObject({ ratio: null, reason: 'no_reports' });
  expect(week.topCauses).toEqual([]);
});
