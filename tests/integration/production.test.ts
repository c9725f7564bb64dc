import { afterAll, beforeAll, expect, test } from 'vitest';
import { newId } from '#api/platform/ids.ts';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import * as make from '#tests/support/master-data.ts';

let it: TestApp;
let plant: Awaited<ReturnType<typeof make.makePlant>>;
let line: { id: string; code: string };
let housing: { id: string };
let engineer: Asker;
const url = '/api/v1/production';

beforeAll(async () => {
  it = await createTestApp();
  plant = await make.makePlant(it.db, { code: 'LIS' });
  line = await make.makeLine(it.db, plant.id);
  housing = await make.makeHousing(it.db);
  engineer = await it.as('engineer', [plant.id]);
});
afterAll(() => it.close());

const row = (day: string, fields = {}) => ({
  plantId: plant.id,
  day,
  lineId: line.id,
  units: 100,
  terminals: 2400,
  ...fields,
});
const put = (rows: object[], by = engineer) => by.post(url, { rows });
const stored = () => it.db.prisma.production.count();

test('rows are added, replaced under their key, and left alone when equal', async () => {
  const rows = [row('2026-06-01'), row('2026-06-02'), row('2026-06-02', { lineId: null, housingId: housing.id })];
  expect((await put(rows)).body).toEqual({ added: 3, changed: 0, same: 0 });
  expect((await put(rows)).body).toEqual({ added: 0, changed: 0, same: 3 });
  const changed = await put([row('2026-06-02', { units: 90 }), row('2026-06-03'), row('2026-06-01')]);
  expect(changed.body).toEqual({ added: 1, changed: 1, same: 1 });
  const audit = await it.db.prisma.auditEntry.findMany({ where: { entity: 'production' }, orderBy: { id: 'asc' } });
  expect(audit).toHaveLength(2);
  expect(audit[1]).toMatchObject({
    label: 'LIS',
    before: { rows: [{ day: '2026-06-02', units: 100, terminals: 2400 }] },
    after: {
      rows: [
        { day: '2026-06-02', units: 90 },
        { day: '2026-06-03', units: 100 },
      ],
    },
  });
});

test('the list pages by day, newest first, and narrows', async () => {
  const days: string[] = [];
  let cursor = '';
  do {
    const { body } = await engineer.get(`${url}?limit=1${cursor && `&cursor=${cursor}`}`);
    days.push(...body.items.map((item: { day: string }) => item.day));
    cursor = body.next;
  } while (cursor);
  expect(days).toEqual(['2026-06-03', '2026-06-02', '2026-06-02', '2026-06-01']);
  const { body } = await engineer.get(`${url}?from=2026-06-02&to=2026-06-03&line=${line.id}`);
  expect(body.items).toMatchObject([
    { day: '2026-06-02', plantCode: 'LIS', lineCode: line.code, housingCode: null, units: 90 },
  ]);
});

test('a row is corrected by one of two writers; the other is told', async () => {
  const [item] = (await engineer.get(`${url}?from=2026-06-03`)).body.items;
  const answers = await Promise.all(
    [70, 80].map((units) => engineer.put(`${url}/${item.id}`, { units, terminals: 10 }, item.version)),
  );
  expect(answers.map(({ status }) => status).sort()).toEqual([200, 412]);
  expect((await engineer.put(`${url}/${newId()}`, { units: 1, terminals: 1 }, 1)).status).toBe(404);
});

test('two senders of the same new rows in opposite order both succeed', async () => {
  const rows = Array.from({ length: 40 }, (_, index) =>
    row(`2026-04-${String((index % 20) + 1).padStart(2, '0')}`, { lineId: index < 20 ? line.id : null }),
  );
  const answers = await Promise.all([put(rows), put([...rows].reverse())]);
  expect(answers.map(({ status }) => status)).toEqual([200, 200]);
  const sum = (key: string) => answers.reduce((total, { body }) => total + body[key], 0);
  expect([sum('added'), sum('changed'), sum('same')]).toEqual([40, 0, 40]);
});

test('what is wrong is named by its row, and nothing of the request is kept', async () => {
  const other = await make.makePlant(it.db);
  const foreignLine = await make.makeLine(it.db, other.id);
  const before = await stored();
  const cases: [object, string][] = [
    [{ plantId: other.id }, 'body/rows/1/plantId'],
    [{ lineId: foreignLine.id }, 'body/rows/1/lineId'],
    [{ housingId: newId() }, 'body/rows/1/housingId'],
    [{ terminalId: newId() }, 'body/rows/1/terminalId'],
    [{ day: '2026-06-16' }, 'body/rows/1/day'],
    [{ day: '2026-05-01' }, 'body/rows/1'],
    [{ units: -1 }, 'body/rows/1/units'],
    [{ units: 1e12 }, 'body/rows/1/units'],
    [{ terminals: 1.5 }, 'body/rows/1/terminals'],
    [{ day: '2026-02-30' }, 'body/rows/1/day'],
  ];
  for (const [fields, path] of cases) {
    const { status, body } = await put([row('2026-05-01'), row('2026-05-02', fields)]);
    expect([400, 422]).toContain(status);
    expect(body.errors[0].path).toBe(path);
  }
  expect(await stored()).toBe(before);
});

test('an inspector reads it but does not write it; a stranger finds nothing', async () => {
  const inspector = await it.as('inspector', [plant.id]);
  expect((await put([row('2026-05-01')], inspector)).status).toBe(403);
  expect((await inspector.get(url)).body.items.length).toBeGreaterThan(0);
  const elsewhere = await make.makePlant(it.db);
  const stranger = await it.as('manager', [elsewhere.id]);
  expect((await stranger.get(url)).body.items).toEqual([]);
  expect((await put([row('2026-05-01')], stranger)).status).toBe(404);
  const [item] = (await engineer.get(url)).body.items;
  expect((await stranger.put(`${url}/${item.id}`, { units: 1, terminals: 1 }, item.version)).status).toBe(404);
});
