import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { addProduction, addReports } from '#tests/support/facts.ts';
import * as make from '#tests/support/master-data.ts';

let it: TestApp;
let viewer: Asker;
let local: Asker;
let lisbon: string;
let osaka: string;
let line: string;

const now = '2026-06-17T10:00:00Z';
const inside = '2026-05-04';
const before = '2026-02-16';
const get = async (path: string, by = viewer) => {
  const { status, body } = await by.get(`/api/v1/analyses/${path}`);
  expect(status, JSON.stringify(body)).toBe(200);
  return body;
};

beforeAll(async () => {
  it = await createTestApp({ now });
  lisbon = (await make.makePlant(it.db, { code: 'LIS', currency: 'EUR' })).id;
  osaka = (await make.makePlant(it.db, { code: 'OSA', zone: 'Asia/Tokyo', currency: 'JPY', weekStart: 7 })).id;
  line = (await make.makeLine(it.db, lisbon, { code: 'L1' })).id;
  await make.makeStages(it.db, lisbon);
  await make.makeStages(it.db, osaka);
  await make.makeExchangeRate(it.db, 'EUR', 'JPY', '160', '2026-01-01');
  await make.makeExchangeRate(it.db, 'EUR', 'JPY', '999', '2026-06-16');
  await make.makeStandardCost(it.db, lisbon, 6, 'reworked', 200);
  await make.makeStandardCost(it.db, lisbon, 2, 'reworked', 10);
  await addReports(it.db, [
    {
      plantId: lisbon,
      foundOn: inside,
      lineId: line,
      cause: 'tooling',
      origin: 2,
      found: 6,
      quantityFound: 2,
      costs: [{ minor: 1000 }],
    },
    {
      plantId: lisbon,
      foundOn: inside,
      cause: 'tooling',
      origin: 2,
      found: 6,
      quantityFound: 3,
      disposition: 'reworked',
    },
    {
      plantId: lisbon,
      foundOn: inside,
      cause: 'handling',
      origin: 3,
      found: 4,
      costs: [{ minor: 70, basis: 'estimated' }],
    },
    { plantId: osaka, foundOn: inside, cause: 'handling', origin: 3, found: 10, costs: [{ minor: 8001 }] },
    { plantId: osaka, foundOn: inside, station: 'none', found: 5 },
    { plantId: lisbon, foundOn: inside, cause: 'adhesive', voidedAt: new Date(now), voidReason: 'twice' },
    { plantId: lisbon, foundOn: before, cause: 'handling', found: 6 },
  ]);
  await addProduction(it.db, [
    { plantId: lisbon, day: inside, lineId: line, units: 1_000, terminals: 40_000 },
    { plantId: lisbon, day: inside, units: 500, terminals: 60_000 },
    { plantId: lisbon, day: before, units: 500, terminals: 50_000 },
  ]);
  viewer = await it.as('viewer');
  local = await it.as('viewer', [lisbon]);
});
afterAll(() => it.close());

describe('what a question settles', () => {
  test('the last 13 full weeks, in the one plant’s zone and week, or in UTC from Monday', async () => {
    expect((await get('pareto')).period).toEqual({ from: '2026-03-16', to: '2026-06-15' });
    expect((await get(`pareto?plant=${osaka}`)).period).toEqual({ from: '2026-03-15', to: '2026-06-14' });
    expect((await get('pareto?from=2026-06-01')).period).toEqual({ from: '2026-06-01', to: '2026-06-18' });
    const turned = await viewer.get('/api/v1/analyses/pareto?from=2026-06-02&to=2026-06-02');
    expect(turned).toMatchObject({ status: 422, body: { code: 'not_consistent' } });
  });

  test('money at the rate of the period’s last day, by the opposite rate where there is no other', async () => {
    const { currency, rates, total } = await get('pareto');
    expect(currency).toBe('EUR');
    expect(rates).toEqual([{ base: 'EUR', quote: 'JPY', rate: '160.0000000000', rateOn: '2026-01-01' }]);
    // 8001 yen / 160 = 50.00625 EUR; with 10.00 EUR 60.00625, rounded once
    expect(total).toMatchObject({ reports: 5, terminals: 8, bookedMinor: 6001, estimateMinor: 600 + 70 });
    const other = await get('pareto?currency=CHF');
    expect(other.withoutRate.toSorted()).toEqual(['EUR', 'JPY']);
    expect(other.total.bookedMinor).toBe(0);
  });

  test('a plant that is not the asker’s is not found', async () => {
    expect((await local.get(`/api/v1/analyses/rates?plant=${osaka}`)).status).toBe(404);
    expect((await get('pareto', local)).plants.map(({ code }: { code: string }) => code)).toEqual(['LIS']);
  });
});

describe('Pareto', () => {
  test('bars by reports with shares, rates and the earlier period', async () => {
    const { bars, other, total, compared } = await get('pareto');
    expect(compared).toEqual({ from: '2025-12-15', to: '2026-03-16' });
    expect(bars.map(({ key, reports }: { key: string; reports: number }) => [key, reports])).toEqual([
      ['handling', 2],
      ['tooling', 2],
      ['none', 1],
    ]);
    expect(bars[0]).toMatchObject({ share: 0.4, cumulativeShare: 0.4, previous: 1, topProbability: 1 });
    // 2 failed terminals of 100 000 inserted
    expect(bars[0].rate.value).toBeCloseTo(20, 9);
    expect(bars[0].change).toMatchObject({ basis: 'rate', verdict: 'within_noise', ratio: 1 });
    expect(bars[1].change).toMatchObject({ basis: 'rate', ratio: null, interval: { high: null } });
    expect(other).toBeNull();
    expect(total).toMatchObject({ exposureTerminals: 100_000, exposureUnits: 1500, withoutCost: 2 - 1 });
  });

  test('every dimension and measure answers, twice the same', async () => {
    const { dimensions } = await import('#contracts/shared/dimension.ts');
    const { measures } = await import('#contracts/analyses.ts');
    for (const dimension of dimensions)
      for (const measure of measures) {
        const path = `pareto?dimension=${dimension}&measure=${measure}&bars=3`;
        expect(await get(path)).toEqual(await get(path));
      }
  });

  test('a rate counts only production of the same line', async () => {
    const { bars } = await get('pareto?dimension=line&measure=rate');
    // 2 terminals of 40 000; the reports without a line have no production of their own
    expect(bars[0]).toMatchObject({ label: 'L1', share: null, reason: null });
    expect(bars[0].value).toBeCloseTo(50, 9);
    expect(bars[1]).toMatchObject({ key: 'none', value: null, reason: 'no_production' });
  });

  test('the other bar adds up and opens by exception', async () => {
    const { bars, other, total } = await get('pareto?dimension=found&bars=3&measure=terminals');
    expect(bars.map(({ key, value }: { key: string; value: number }) => [key, value])).toEqual([
      ['electrical_test', 5],
      ['field', 1],
      ['insertion', 1],
    ]);
    expect(other).toMatchObject({ bars: 1, reports: 1, terminals: 1, value: 1 });
    expect(total.value).toBe(8);
    const query = new URLSearchParams(other.except.map((except: string) => ['except', except]));
    const { body } = await viewer.get(`/api/v1/failures/count?from=2026-03-16&to=2026-06-15&${query}`);
    expect(body).toEqual({ reports: 1, terminals: 1 });
    expect((await viewer.get('/api/v1/failures/count?except=tool:abc')).status).toBe(400);
  });
});

describe('rates', () => {
  test('weeks, plants, and a denominator that says when it is wider', async () => {
    const { overall, buckets, byPlant, exposureScope } = await get('rates?from=2026-05-04&to=2026-05-20');
    expect(overall).toMatchObject({ reports: 5, terminals: 8, exposureTerminals: 100_000, exposureUnits: 1500 });
    expect(overall.dpmo.value).toBeCloseTo(80, 9);
    expect(buckets.map(({ from, to }: { from: string; to: string }) => [from, to])).toEqual([
      ['2026-05-04', '2026-05-11'],
      ['2026-05-11', '2026-05-18'],
      ['2026-05-18', '2026-05-20'],
    ]);
    expect(buckets[1]).toMatchObject({ reports: 0, dpmo: { value: null, reason: 'no_production' } });
    expect(byPlant[1]).toMatchObject({ plantCode: 'OSA', reports: 2, dpmo: { reason: 'no_production' } });
    expect(exposureScope).toBe('exact');
    const narrowed = await get(`rates?from=2026-05-04&to=2026-05-20&cause=tooling&line=${line}&bucket=month`);
    expect(narrowed).toMatchObject({ exposureScope: 'wider', overall: { terminals: 2, exposureTerminals: 40_000 } });
  });
});

describe('escapes', () => {
  test('cells, gates and what passed two of them', async () => {
    const { cells, total, withoutOrigin, gates, passedTwo } = await get('escapes');
    expect(cells.map(({ origin, found, reports }: Record<string, unknown>) => [origin, found, reports])).toEqual([
      ['termination', 'electrical_test', 2],
      ['lead_storage', 'insertion', 1],
      ['lead_storage', 'field', 1],
      [null, 'lock_check', 1],
    ]);
    expect(total.reports).toBe(5);
    expect(withoutOrigin.reports).toBe(1);
    // made at lead storage or before and not found before insertion: 4, of which one is found at insertion
    expect(gates.find(({ stage }: { stage: string }) => stage === 'insertion')).toMatchObject({
      foundHere: 1,
      foundLater: 3,
      effectiveness: { value: 0.25 },
    });
    // 2 → 6 passes 3, 4, 5; 3 → 10 passes 4 to 9; 3 → 4 passes none
    expect(passedTwo).toMatchObject({ reports: 3, share: { value: 0.75 } });
  });
});

describe('costs', () => {
  test('booked, estimated, avoidable, by stage and by category', async () => {
    const costs = await get('costs');
    expect(costs).toMatchObject({ bookedMinor: 6001, estimateMinor: 670, withoutCost: 1, standardMinor: 600 });
    expect(costs.byCategory).toEqual([{ category: 'rework_labour', bookedMinor: 6001, estimatedMinor: 70 }]);
    // tooling is visible from termination on: 1000 - 2 × 10 and 600 - 3 × 10. Handling is visible from insertion on: the one
    // found there is in time; Osaka's has no standard cost there. One report has no cause.
    expect(costs.avoidable).toEqual({
      minor: 980 + 570,
      reports: 3,
      notComputable: [
        { reason: 'no_cause', reports: 1 },
        { reason: 'no_origin', reports: 0 },
        { reason: 'no_standard_cost', reports: 1 },
        { reason: 'no_cost', reports: 0 },
      ],
    });
    const late = await viewer.get('/api/v1/failures/count?from=2026-03-16&to=2026-06-15&avoidable=true');
    expect(late.body.reports).toBe(3);
    const [, test6] = costs.byFound.filter(({ stage }: { stage: string }) => stage !== 'lock_check');
    expect(test6).toMatchObject({
      stage: 'electrical_test',
      perTerminal: { reports: 1 },
      factor: { reason: 'too_few' },
    });
    // logarithms are kept in millionths
    expect(test6.perTerminal.bookedMinor).toBeCloseTo(500, 3);
    expect(costs.baseStage).toBe('electrical_test');
  });
});

test('an empty group of plants answers with reasons, not with errors', async () => {
  for (const path of ['pareto', 'rates', 'escapes', 'costs']) {
    const empty = await get(`${path}?from=2020-01-01&to=2020-02-01`);
    expect(empty.period).toEqual({ from: '2020-01-01', to: '2020-02-01' });
  }
});
