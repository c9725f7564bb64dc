import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { simulated } from '#api/features/what-if/compute.service.ts';
import { bestWhatIfs } from '#api/features/what-if/what-if.service.ts';
import type { WhatIf, WhatIfResult } from '#contracts/what-if.ts';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { addReports } from '#tests/support/facts.ts';
import * as make from '#tests/support/master-data.ts';

let it: TestApp;
let engineer: Asker;
let plant: string;
let other: string;

const check = {
  key: 'check',
  kind: 'push_click_pull',
  name: 'Push-click-pull',
  onceMinor: 10_000,
  yearlyMinor: 0,
  effects: [{ cause: 'partial_seat', low: 0.5, likely: 0.5, high: 0.5 }],
};
const lock = {
  key: 'lock',
  kind: 'secondary_lock',
  name: 'Secondary lock',
  onceMinor: 200_000,
  yearlyMinor: 5000,
  effects: [{ cause: 'partial_seat', low: 0.8, likely: 0.9, high: 0.95 }],
};
const relief = {
  key: 'relief',
  kind: 'strain_relief',
  name: 'Strain relief',
  onceMinor: 0,
  yearlyMinor: 0,
  effects: [{ cause: 'wire_dress', low: 0.4, likely: 0.4, high: 0.4 }],
};
const input = { options: [check, lock, relief], together: ['check', 'lock'], horizonYears: 2, seed: 3 };
/** 365 days. */
const period = 'from=2025-06-01&to=2026-06-01';

beforeAll(async () => {
  it = await createTestApp({ now: '2026-06-17T10:00:00Z' });
  [plant, other] = await Promise.all([
    make.makePlant(it.db, { code: 'LIS', currency: 'EUR' }),
    make.makePlant(it.db, { code: 'OST', currency: 'EUR' }),
  ]).then((made) => made.map(({ id }) => id) as [string, string]);
  await make.makeStages(it.db, plant);
  const report = (cause: string | null, minor: number, plantId = plant, basis: 'booked' | 'estimated' = 'booked') => ({
    plantId,
    foundOn: '2026-01-15',
    cause: cause as never,
    costs: [{ minor, basis }],
  });
  await addReports(it.db, [
    ...Array.from({ length: 50 }, () => report('partial_seat', 10_000)),
    ...Array.from({ length: 10 }, () => report('partial_seat', 2000, plant, 'estimated')),
    ...Array.from({ length: 20 }, () => report('wire_dress', 5000)),
    report(null, 7000),
    report('undetermined', 1000),
    report('partial_seat', 999_999, other),
  ]);
  engineer = await it.as('engineer', [plant]);
});
afterAll(() => it.close());

const compute = async (more: object = {}, query = period): Promise<WhatIfResult> => {
  const { status, body } = await engineer.post(`/api/v1/analyses/what-if?plant=${plant}&${query}`, {
    ...input,
    ...more,
  });
  expect(status, JSON.stringify(body)).toBe(200);
  return body;
};
const years = 365 / 365.25;

describe('computed', () => {
  test('from what the faults of each cause cost at this plant in this period', async () => {
    const result = await compute({ money: 'booked' });
    expect(result.costs).toEqual([
      {
        cause: 'partial_seat',
        reports: 60,
        bookedMinor: 500_000,
        estimateMinor: 20_000,
        sumMinor: 500_000,
        sumOfSquares: 50 * 10_000 ** 2,
      },
      expect.objectContaining({ cause: 'wire_dress', reports: 20, sumMinor: 100_000 }),
    ]);
    expect(result.unsorted).toEqual({ reports: 2, bookedMinor: 8000, estimateMinor: 0 });
    expect(result.reports).toBe(82);
    expect(result.years).toBeCloseTo(years, 12);
    const opened = await engineer.get(`/api/v1/failures/count?plant=${plant}&${period}&cause=partial_seat`);
    expect(opened.body.reports).toBe(60);
  });

  test('savings are the causes’ costs times what is prevented, options together less than their sum', async () => {
    const { alone, together, best } = await compute({ money: 'booked' });
    const mean = (0.8 + 4 * 0.9 + 0.95) / 6;
    expect(alone[0]!.savingPerYear.value).toBeCloseTo((500_000 * 0.5) / years, 4);
    expect(alone[1]!.netPerYear.value).toBeCloseTo((500_000 * mean) / years - 5000, 4);
    expect(together.savingPerYear.value).toBeCloseTo((500_000 * (1 - 0.5 * (1 - mean))) / years, 4);
    expect(together).toMatchObject({ keys: ['check', 'lock'], onceMinor: 210_000, yearlyMinor: 5000, reason: null });
    expect(together.savingPerYear.interval!.low).toBeLessThan(together.savingPerYear.value!);
    // Free and useful: in every best set. The lock beyond the check saves 0.44 × 500 000 × 2 > 210 000.
    expect(best!.keys).toEqual(['check', 'lock', 'relief']);
    expect((await compute({ money: 'booked', budgetMinor: 150_000 })).best!.keys).toEqual(['check', 'relief']);
  });

  test('estimates count only where they are asked for', async () => {
    expect((await compute()).costs[0]).toMatchObject({ sumMinor: 520_000 });
    expect((await compute({ together: ['relief'] }, 'from=2025-01-01&to=2025-02-01')).together).toMatchObject({
      probabilityPays: null,
      reason: 'no_cost',
    });
  });

  test.each([
    ['a set that names no option of the list', { together: ['nothing'] }, 422, 'body/together/0'],
    ['an option twice', { options: [check, check] }, 422, 'body/options/1'],
    [
      'a cause twice in one option',
      { options: [{ ...check, effects: [...check.effects, ...check.effects] }], together: ['check'] },
      422,
      'body/options/0/effects/1',
    ],
    ['options that exclude each other', { options: [{ ...check, excludes: ['lock'] }, lock] }, 422, 'body/together/0'],
    [
      'a range that falls',
      { options: [{ ...check, effects: [{ cause: 'tooling', low: 0.5, likely: 0.4, high: 0.9 }] }] },
      400,
      'body/options/0/effects/0/likely',
    ],
    [
      'thirteen options',
      { options: Array.from({ length: 13 }, (_, i) => ({ ...check, key: `o${i}` })) },
      400,
      'body/options',
    ],
  ])('%s is refused', async (_, more, status, path) => {
    const answer = await engineer.post(`/api/v1/analyses/what-if?plant=${plant}&${period}`, { ...input, ...more });
    expect(answer.status, JSON.stringify(answer.body)).toBe(status);
    expect(answer.body.errors.map((error: { path: string }) => error.path)).toContain(path);
  });
});

describe('kept', () => {
  const keep = (more: object = {}) =>
    engineer.post('/api/v1/what-if', {
      name: 'Line 2',
      note: 'for the budget round',
      query: `plant=${plant}&${period}`,
      input,
      ...more,
    });

  test('shows the same figures a year and many reports later, and gives them again from what was kept', async () => {
    const { status, body } = await keep();
    expect(status, JSON.stringify(body)).toBe(201);
    const before = it.time.now;
    onTestFinished(() => {
      it.time.now = before;
    });
    it.time.now = new Date('2027-06-17T10:00:00Z');
    const successor = await it.as('engineer', [plant]);
    await addReports(it.db, [
      { plantId: plant, foundOn: '2026-02-01', cause: 'partial_seat', costs: [{ minor: 5e6 }] },
    ]);
    const later: WhatIf = (await successor.get(`/api/v1/what-if/${body.id}`)).body;
    expect(later).toEqual(body);
    const { result, input: used } = later;
    const costs = result.costs.map(({ cause, sumMinor, sumOfSquares }) => ({ cause, sum: sumMinor, sumOfSquares }));
    const { alone, together, best } = simulated(costs, result.years, used);
    expect({ alone, together, best }).toEqual({ alone: result.alone, together: result.together, best: result.best });
    const changed = await successor.put(
      `/api/v1/what-if/${body.id}`,
      { name: 'Line 2', note: null, query: later.query, input: used },
      1,
    );
    expect(changed.body.result.costs[0].reports).toBe(61);
    expect(changed.body).toMatchObject({
      version: 2,
      computedAt: '2027-06-17T10:00:00.000Z',
      createdAt: body.createdAt,
    });
  });

  test('its period is pinned where the words named none', async () => {
    const { body } = await keep({ query: `plant=${plant}` });
    expect(body.query).toContain(`from=${body.result.period.from}&to=${body.result.period.to}`);
    expect(body.query).toContain('currency=EUR');
  });

  test('is listed, put away and taken back; every step is in the trail', async () => {
    const { body } = await keep({ name: 'To put away' });
    const names = async (query = '') =>
      (await engineer.get(`/api/v1/what-if?plant=${plant}${query}`)).body.items.map((item: WhatIf) => item.name);
    expect(await names()).toContain('To put away');
    const retired = await engineer.put(`/api/v1/what-if/${body.id}/retired`, { retired: true }, 1);
    expect(retired.status).toBe(200);
    expect(await names()).not.toContain('To put away');
    expect(await names('&retired=true')).toEqual(['To put away']);
    expect((await engineer.put(`/api/v1/what-if/${body.id}/retired`, { retired: false }, 1)).status).toBe(412);
    expect((await engineer.put(`/api/v1/what-if/${body.id}/retired`, { retired: false }, 2)).status).toBe(200);
    const trail = await it.db.prisma.auditEntry.findMany({ where: { entityId: body.id }, orderBy: { id: 'asc' } });
    expect(trail.map(({ action }) => action)).toEqual(['created', 'retired', 'restored']);
  });

  test('pages of the list follow each other', async () => {
    const first = (await engineer.get(`/api/v1/what-if?plant=${plant}&limit=2`)).body;
    const second = (await engineer.get(`/api/v1/what-if?plant=${plant}&limit=2&cursor=${first.next}`)).body;
    const ids = [...first.items, ...second.items].map(({ id }: WhatIf) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toEqual(ids.toSorted().toReversed());
  });

  test('belongs to one plant, which is the writer’s', async () => {
    const two = await keep({ query: `plant=${plant}&plant=${other}&${period}` });
    expect(two.status).toBe(422);
    expect((await keep({ query: period })).status).toBe(422);
    expect((await keep({ query: `plant=${other}&${period}` })).status).toBe(404);
    expect((await keep({ query: 'plant=x' })).status).toBe(400);
    const { body } = await keep();
    const stranger = await it.as('engineer', [other]);
    expect((await stranger.get(`/api/v1/what-if/${body.id}`)).status).toBe(404);
    const viewer = await it.as('viewer', [plant]);
    expect((await viewer.get(`/api/v1/what-if/${body.id}`)).status).toBe(200);
    const both = await it.as('engineer');
    const moved = await both.put(
      `/api/v1/what-if/${body.id}`,
      { name: 'moved', query: `plant=${other}&${period}`, input },
      1,
    );
    expect(moved.status).toBe(422);
  });

  test('the one whose best set is worth most stands for its plant', async () => {
    const [best, ...more] = await bestWhatIfs(it.db, [plant]);
    expect(more).toEqual([]);
    const all = (await engineer.get(`/api/v1/what-if?plant=${plant}`)).body.items as WhatIf[];
    expect(best!.best!.worthMinor).toBe(Math.max(...all.map((one) => one.best?.worthMinor ?? 0)));
    expect(await bestWhatIfs(it.db, [other])).toEqual([]);
  });
});
