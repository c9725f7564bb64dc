import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { check, commit, map, upload } from '#tests/support/imports.ts';
import * as make from '#tests/support/master-data.ts';

let it: TestApp;
let plant: { id: string };
let other: { id: string };
let terminal: { id: string };
let good: { id: string };
let worn: { id: string };
let inspector: Asker;

beforeAll(async () => {
  it = await createTestApp({ now: '2026-06-15T10:00:00Z' });
  plant = await make.makePlant(it.db, { code: 'LIS' });
  other = await make.makePlant(it.db, { code: 'OSA', zone: 'Asia/Tokyo', currency: 'JPY' });
  terminal = await make.makeTerminal(it.db, { code: 'T-9', minRetentionN: 40 });
  good = await make.makeTool(it.db, plant.id, { code: 'AP-1' });
  worn = await make.makeTool(it.db, plant.id, { code: 'AP-2' });
  inspector = await it.as('inspector', [plant.id]);
});
afterAll(() => it.close());

const sample = (fields: object = {}) => ({
  plantId: plant.id,
  kind: 'retention',
  day: '2026-06-10',
  terminalId: terminal.id,
  unit: 'N',
  values: [55, 57.5, 60, 58, 56, 59, 61, 57, 58.5, 60.5],
  ...fields,
});
const enter = (fields: object = {}, by = inspector) => by.post('/api/v1/force', sample(fields));

describe('a force sample', () => {
  test('is kept as entered and in newtons, known by its parts and day, corrected and voided, each audited', async () => {
    const { status, body } = await enter({ toolId: good.id, unit: 'lbf', values: [10, 12.5, 8], minimum: 9 });
    expect(status).toBe(201);
    expect(body).toMatchObject({ unit: 'lbf', values: [10, 12.5, 8], minimum: 9, below: 1, terminalCode: 'T-9' });
    expect(body.newtons[0]).toBeCloseTo(44.482216152605, 9);
    expect(body.minimumN).toBeCloseTo(40.0339945373445, 9);
    const twice = await enter({ toolId: good.id });
    expect(twice.body).toMatchObject({ status: 409, errors: [{ path: 'body/reference' }] });
    expect((await enter({ toolId: good.id, reference: 'shift 2' })).status).toBe(201);

    const change = sample({ toolId: good.id, values: [50, 51] });
    expect((await inspector.put(`/api/v1/force/${body.id}`, change, 2)).status).toBe(412);
    const changed = await inspector.put(`/api/v1/force/${body.id}`, change, 1);
    expect(changed.body).toMatchObject({ values: [50, 51], minimumN: 40, below: 0, version: 2 });
    expect((await inspector.put(`/api/v1/force/${body.id}/void`, { reason: 'worn jaw' }, 2)).status).toBe(204);
    expect((await inspector.put(`/api/v1/force/${body.id}`, change, 3)).status).toBe(404);
    const { items } = (await inspector.get('/api/v1/force')).body;
    expect(items.map(({ reference }: { reference: string }) => reference)).toEqual(['shift 2']);
    const trail = await it.db.prisma.auditEntry.findMany({ where: { entityId: body.id }, orderBy: { id: 'asc' } });
    expect(trail.map(({ action, label }) => [action, label])).toEqual([
      ['recorded', 'T-9 2026-06-10'],
      ['corrected', 'T-9 2026-06-10'],
      ['voided', 'T-9 2026-06-10'],
    ]);
  });

  test('is refused with bad input, and nothing changes', async () => {
    const before = await it.db.prisma.forceSample.count();
    const foreignTool = await make.makeTool(it.db, other.id);
    const bad: [object, number][] = [
      [{ values: [] }, 400],
      [{ values: [0] }, 400],
      [{ values: [-3] }, 400],
      [{ values: [1e9] }, 400],
      [{ values: ['12'] }, 400],
      [{ values: Array(1001).fill(50) }, 400],
      [{ unit: 'kg' }, 400],
      [{ day: '20260-06-10' }, 400],
      [{ day: '2026-07-10' }, 422],
      [{ toolId: foreignTool.id }, 422],
      [{ terminalId: plant.id }, 422],
      [{ plantId: other.id }, 404],
    ];
    for (const [fields, status] of bad) {
      const answer = await enter(fields);
      expect([JSON.stringify(fields), answer.status]).toEqual([JSON.stringify(fields), status]);
      expect(answer.body.detail).toBeTruthy();
    }
    expect(await it.db.prisma.forceSample.count()).toBe(before);
  });
});

describe('the analysis', () => {
  test('judges a terminal against its minimum, tool by tool, and puts those in need first', async () => {
    const fine = await make.makeTerminal(it.db, { code: 'T-10', minRetentionN: 30 });
    await enter({ terminalId: fine.id });
    const low = [44, 41, 39, 45, 42, 40.5, 43, 38.5, 44.5, 41.5];
    await enter({ toolId: worn.id, values: low });
    const { groups, period } = (await inspector.get('/api/v1/analyses/force')).body;
    expect(period).toEqual({ from: '2025-06-18', to: '2026-06-17' });
    expect(groups.map((it: { terminalCode: string }) => it.terminalCode)).toEqual(['T-9', 'T-10']);
    expect(groups[1]).toMatchObject({ meetsMinimum: true, belowInSample: 0, method: 'normal', samples: 1, values: 10 });

    const { body } = await inspector.get(`/api/v1/analyses/force/${terminal.id}?kind=retention`);
    const [first, second] = body.tools;
    expect([first.toolCode, second.toolCode]).toEqual(['AP-2', 'AP-1']);
    expect(first).toMatchObject({ belowInSample: 2, meetsMinimum: false, minimumN: 40 });
    // one-sided factor for n = 10, 95/95: 2.911 (Natrella 1963, NBS Handbook 91, Table A-7)
    const mean = low.reduce((sum, it) => sum + it, 0) / low.length;
    const deviation = Math.sqrt(low.reduce((sum, it) => sum + (it - mean) ** 2, 0) / 9);
    expect(first.bound).toBeCloseTo(mean - 2.911 * deviation, 2);
    expect(first.below.value).toBeGreaterThan(first.below.interval.low);
    expect(second).toMatchObject({ meetsMinimum: true });
    expect(body.whole.values).toBe(20);
    expect(body.runs).not.toBeNull();
    expect(body.samples.map(({ newtons }: { newtons: number[] }) => newtons.length)).toEqual([10, 10]);
  });

  test('says when it cannot judge: no minimum, a single value, equal values; and names other minimums', async () => {
    const bare = await make.makeTerminal(it.db, { code: 'T-11' });
    const detail = async () =>
      (await inspector.get(`/api/v1/analyses/force/${bare.id}?kind=pull_out`)).body as { whole: object | null };
    expect((await detail()).whole).toBeNull();
    const pull = (fields: object) => enter({ terminalId: bare.id, kind: 'pull_out', ...fields });
    await pull({ day: '2026-06-01', values: [90, 95] });
    expect((await detail()).whole).toMatchObject({ notJudged: 'no_minimum', minimumN: null, bound: null });
    await pull({ day: '2026-06-02', minimum: 60, values: [93] });
    await pull({ day: '2026-06-03', minimum: 75, values: [91] });
    expect((await detail()).whole).toMatchObject({ notJudged: null, minimumN: 75, otherMinimums: [60], values: 4 });
  });

  test('shows nobody a foreign plant', async () => {
    const stranger = await it.as('viewer', [other.id]);
    expect((await stranger.get('/api/v1/analyses/force')).body.groups).toEqual([]);
    expect((await stranger.get('/api/v1/force')).body.items).toEqual([]);
    expect((await stranger.get(`/api/v1/force?plant=${plant.id}`)).status).toBe(404);
  });
});

test('an import makes samples of rows that belong together; a repeat adds nothing, a changed one replaces the sample', async () => {
  const engineer = await it.as('engineer', [plant.id]);
  const file = (last: string) =>
    [
      'Werk;Tag;Prüfart;Kontakt;Werkzeug;Ausreißkraft;Einheit;Mindestkraft',
      'LIS;2026-06-11;Ausreißen;T-9;AP-1;101,5;N;80',
      'LIS;2026-06-11;Ausreißen;T-9;AP-1;98,25;N;80',
      `LIS;2026-06-11;Ausreißen;T-9;AP-1;${last};N;80`,
      'LIS;2026-06-11;Ausreißen;T-9;AP-2;22;lbf;',
      'LIS;2026-06-11;Ausreißen;T-9;AP-2;21;N;',
      'LIS;2026-06-12;Ausreißen;T-9;;0;N;',
    ].join('\r\n');
  const bring = async (last: string) =>
    check(
      engineer,
      await map(engineer, (await upload(engineer, file(last), { kind: 'force', source: 'lab' })).body, {}),
    );
  const first = await bring('97');
  expect(first).toMatchObject({ state: 'checked', outcome: { rows: 6, added: 3, refused: 3 } });
  expect(first.outcome!.reasons.map(({ reason }) => reason).sort()).toEqual(['sample_differs', 'too_small']);
  await commit(engineer, first, true);
  const read = async () => (await engineer.get('/api/v1/force?kind=pull_out&from=2026-06-11')).body.items;
  expect(await read()).toMatchObject([
    { values: [101.5, 98.25, 97], unit: 'N', minimum: 80, toolCode: 'AP-1', version: 1 },
  ]);
  expect((await bring('97')).outcome).toMatchObject({ added: 0, changed: 0, skipped: 3 });
  await commit(engineer, await bring('79'), true);
  const [changed] = await read();
  expect(changed).toMatchObject({ values: [101.5, 98.25, 79], below: 1, version: 2 });
  const audited = await it.db.prisma.auditEntry.findFirst({ where: { entityId: changed.id, action: 'imported' } });
  expect(audited).toMatchObject({ before: { values: [101.5, 98.25, 97] }, after: { values: [101.5, 98.25, 79] } });
});
