import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Gates } from '#contracts/gates.ts';
import type { Maturity } from '#contracts/maturity.ts';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { addProduction, addReports, type ReportFact } from '#tests/support/facts.ts';
import * as make from '#tests/support/master-data.ts';

let it: TestApp;
let viewer: Asker;
let plant: string;
let late: string;

/** Cumulated: 2025-11 4 10 12 12, 2025-12 8 20 24, 2026-01 5 15, 2026-02 3. The last full month is February. */
const found: [built: string, found: string, count: number][] = [
  ['2025-11', '2025-11', 4],
  ['2025-11', '2025-12', 6],
  ['2025-11', '2026-01', 2],
  ['2025-12', '2025-12', 8],
  ['2025-12', '2026-01', 12],
  ['2025-12', '2026-02', 4],
  ['2026-01', '2026-01', 5],
  ['2026-01', '2026-02', 10],
  ['2026-02', '2026-02', 3],
  ['2026-02', '2026-03', 9],
];

beforeAll(async () => {
  it = await createTestApp({ now: '2026-03-20T10:00:00Z' });
  plant = (await make.makePlant(it.db, { code: 'LIS', currency: 'EUR' })).id;
  late = (await make.makePlant(it.db, { code: 'OST', currency: 'EUR' })).id;
  await make.makeStages(it.db, plant);
  const field = (
    plantId: string,
    foundOn: string,
    builtOn: string | null,
    more: Partial<ReportFact> = {},
  ): ReportFact => ({
    plantId,
    foundOn,
    builtOn: builtOn === null ? null : new Date(builtOn),
    source: 'field',
    found: 10,
    origin: 4,
    cause: 'partial_seat',
    costs: [{ minor: 50_000 }],
    ...more,
  });
  await addReports(it.db, [
    // Records begin on 1 November 2025.
    { plantId: plant, foundOn: '2025-11-01', origin: 4, found: 5, cause: 'partial_seat', costs: [{ minor: 100 }] },
    ...found.flatMap(([built, month, count]) =>
      Array.from({ length: count }, () => field(plant, `${month}-20`, `${built}-10`)),
    ),
    field(plant, '2026-01-05', '2025-08-01'),
    field(plant, '2026-01-07', null),
    field(plant, '2026-02-07', null, { source: 'customer' }),
    ...Array.from({ length: 60 }, () => ({
      plantId: plant,
      foundOn: '2026-01-12',
      origin: 4,
      found: 5,
      cause: 'partial_seat' as const,
      costs: [{ minor: 200 }],
    })),
    ...Array.from({ length: 40 }, () => ({
      plantId: plant,
      foundOn: '2026-01-13',
      origin: 4,
      found: 6,
      cause: 'partial_seat' as const,
      costs: [{ minor: 900 }],
    })),
    // The other plant begins later; what it built in December was not seen from its start.
    { plantId: late, foundOn: '2026-01-02', found: 6 },
    field(late, '2026-02-10', '2025-12-10'),
    field(late, '2026-02-11', '2026-01-10'),
  ]);
  await addProduction(
    it.db,
    ['2025-11', '2025-12', '2026-01', '2026-02'].map((month) => ({
      plantId: plant,
      day: `${month}-15`,
      units: 100_000,
      terminals: 1_000_000,
    })),
  );
  viewer = await it.as('viewer');
});
afterAll(() => it.close());

const read = async (query: string): Promise<Maturity> => {
  const { status, body } = await viewer.get(`/api/v1/analyses/maturity?${query}`);
  expect(status, JSON.stringify(body)).toBe(200);
  return body;
};
const count = async (query: string): Promise<number> =>
  (await viewer.get(`/api/v1/failures/count?${query}`)).body.reports;

describe('field maturity', () => {
  test('cumulates what was seen from the start, and stops with the last full month', async () => {
    const { rows, lastMonth, recordsFrom, reports } = await read(`plant=${plant}`);
    expect(rows.map(({ month, cumulative }) => [month, cumulative])).toEqual([
      ['2025-11', [4, 10, 12, 12]],
      ['2025-12', [8, 20, 24]],
      ['2026-01', [5, 15]],
      ['2026-02', [3]],
    ]);
    expect({ lastMonth, recordsFrom, reports }).toEqual({ lastMonth: '2026-02', recordsFrom: '2025-11', reports: 54 });
  });

  test('expects by the growth of older months', async () => {
    const { rows, reportedByAge, forecast } = await read(`plant=${plant}`);
    // Factors: 45 / 17, 36 / 30, 12 / 12.
    const [first, second] = [45 / 17, 36 / 30];
    expect(rows[3]!.final.value).toBeCloseTo(3 * first * second, 9);
    expect(rows[2]!.final.value).toBeCloseTo(15 * second, 9);
    expect(reportedByAge[0]).toBeCloseTo(1 / (first * second), 9);
    expect(rows.map(({ mature }) => mature)).toEqual([true, true, true, false]);
    expect(rows[3]!.finalPerMillion.value).toBeCloseTo((3 * first * second * 1e6) / 100_000, 6);
    expect(forecast.months.map(({ month }) => month).slice(0, 2)).toEqual(['2026-03', '2026-04']);
    expect(forecast.total.value).toBeGreaterThan(5);
  });

  test('every row and everything left out opens its reports', async () => {
    for (const query of [`plant=${plant}`, `plant=${plant}&plant=${late}`, '']) {
      const { rows, leftOut } = await read(query);
      for (const row of rows) expect([row.month, await count(row.filter)]).toEqual([row.month, row.cumulative.at(-1)]);
      for (const { reason, reports, filter } of leftOut)
        expect([reason, await count(filter)]).toEqual([reason, reports]);
    }
    const { leftOut } = await read(`plant=${plant}&plant=${late}`);
    expect(leftOut.map(({ reason, reports }) => [reason, reports]).sort()).toEqual([
      ['built_earlier', 1],
      ['built_earlier', 1],
      ['no_build_date', 2],
    ]);
  });

  test('life counts failures among the units built', async () => {
    const { life } = await read(`plant=${plant}`);
    expect(life).toMatchObject({ reports: 54, units: 400_000 });
    expect(life.steps.at(-1)!.failed).toBeGreaterThan(54 / 400_000);
    expect(life.weibull.shape.value).not.toBeNull();
  });

  test('claims nothing from a few reports', async () => {
    const { rows, forecast, reportedByAge } = await read(`plant=${late}`);
    expect(rows.map(({ final }) => final.reason)).toEqual(['too_few', 'too_few']);
    expect(reportedByAge).toEqual([]);
    expect(forecast.total.reason).toBe('no_production');
  });
});

describe('gates', () => {
  const gates = async (query: string): Promise<Gates> => {
    const { status, body } = await viewer.get(`/api/v1/analyses/gates?plant=${plant}&${query}`);
    expect(status, JSON.stringify(body)).toBe(200);
    return body;
  };
  const period = 'from=2026-01-01&to=2026-03-01';

  test('as reported agree with the escapes page; matured take what was built in the period', async () => {
    const data = await gates(period);
    const escapes = (await viewer.get(`/api/v1/analyses/escapes?plant=${plant}&${period}`)).body;
    for (const gate of escapes.gates)
      expect(data.gates.find(({ stage }) => stage === gate.stage)).toMatchObject({
        foundHere: gate.foundHere,
        foundLater: gate.foundLater,
        effectiveness: gate.effectiveness,
      });
    const test = data.gates.find(({ stage }) => stage === 'electrical_test')!;
    // Of what was built in January and February 15 + 3 are reported, by half as much built in each: (1 / 1.2 + 17 / 54) / 2.
    const reported = ((1 / 1.2 + 17 / 54) / 2) * (data.maturity.withBuildDate / (data.maturity.withBuildDate + 2));
    expect(data.maturity).toMatchObject({ withoutBuildDate: 2, reason: null, until: '2026-03-01' });
    expect(data.maturity.reported).toBeCloseTo(reported, 9);
    expect(test).toMatchObject({ foundHere: 40, foundInsideLater: 0, fieldBuilt: 18 });
    expect(test.fieldToCome).toBeCloseTo((18 * (1 - reported)) / reported, 9);
    expect(test.matured.value).toBeCloseTo(40 / (40 + 18 / reported), 9);
  });

  test('counts open their reports', async () => {
    const data = await gates(period);
    const own = `plant=${plant}&origin=receiving,termination,lead_storage,insertion,lock_check`;
    const gate = data.gates.find(({ stage }) => stage === 'lock_check')!;
    expect(await count(`${own}&${period}&found=lock_check`)).toBe(gate.foundHere);
    expect(await count(`${own}&to=2026-03-01&builtFrom=2026-01-01&builtTo=2026-03-01&built=true&found=field`)).toBe(
      gate.fieldBuilt,
    );
  });

  test('one more point is worth the faults it keeps from further on; ranking by money takes costs', async () => {
    const data = await gates(`${period}&money=booked`);
    expect(data.found.find(({ stage }) => stage === 'field')).toMatchObject({ bookedMinor: 50_000, estimateMinor: 0 });
    expect(data.found.map(({ basis }) => basis).slice(3, 7)).toEqual(['neighbour', 'reports', 'reports', 'neighbour']);
    const test = data.gates.find(({ stage }) => stage === 'electrical_test')!;
    expect(test.onePoint.value).toBeGreaterThan(0);
    expect(test.onePoint.value).toBeCloseTo(test.faultsPerYear.value! * 0.01 * (50_000 - 900), 4);
    expect(data.next.perMoney).toBe(false);
    const costs = data.gates
      .map(({ stage }) => `pointCost=${stage}:${stage === 'lock_check' ? 1 : 100_000_000}`)
      .join('&');
    const priced = await gates(`${period}&money=booked&${costs}`);
    expect(priced.next).toEqual({ stage: 'lock_check', candidates: ['lock_check'], perMoney: true });
    const refused = await viewer.get(`/api/v1/analyses/gates?plant=${plant}&pointCost=field:5`);
    expect(refused.status).toBe(400);
  });

  test('says when too little is known of the field', async () => {
    const data = (await viewer.get(`/api/v1/analyses/gates?plant=${late}&${period}`)).body as Gates;
    expect(data.maturity).toMatchObject({ reported: null, reason: 'too_few' });
    expect(data.gates.every(({ matured }) => matured.value === null)).toBe(true);
  });
});
