import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Review } from '#contracts/review.ts';
import type { ReviewContent } from '#contracts/review-content.ts';
import { execute, sql } from '#db/sql.ts';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { addProduction, addReports } from '#tests/support/facts.ts';
import * as make from '#tests/support/master-data.ts';

let it: TestApp;
let manager: Asker;
let viewer: Asker;
let lisbon: string;
let porto: string;

beforeAll(async () => {
  it = await createTestApp({ now: '2026-06-15T07:00:00Z' });
  for (const code of ['LIS', 'OPO']) {
    const { id } = await make.makePlant(it.db, { code, currency: 'EUR', zone: 'Europe/Lisbon' });
    await make.makeStages(it.db, id);
    if (code === 'LIS') lisbon = id;
    else porto = id;
  }
  const base = { plantId: lisbon, foundOn: '2026-06-09' };
  await addReports(it.db, [
    { ...base, cause: 'tooling', origin: 2, found: 6, costs: [{ minor: 900 }] },
    { ...base, cause: 'tooling', origin: 2, found: 6 },
    { ...base, cause: 'partial_seat', origin: 4, found: 5 },
    {
      ...base,
      cause: 'partial_seat',
      origin: 4,
      found: 10,
      source: 'field',
      costs: [{ minor: 5000, basis: 'estimated' }],
    },
    { ...base, found: 6, safety: true },
    { plantId: porto, foundOn: '2026-06-10', cause: 'handling', origin: 3, found: 6 },
    { plantId: lisbon, foundOn: '2026-06-03', cause: 'tooling', origin: 2, found: 6 },
  ]);
  await addProduction(it.db, [{ plantId: lisbon, day: '2026-06-09', units: 100, terminals: 10_000 }]);
  manager = await it.as('manager', [lisbon]);
  viewer = await it.as('viewer', [lisbon]);
});
afterAll(() => it.close());

const week = async (asker: Asker, query = ''): Promise<Review> =>
  (await asker.get(`/api/v1/reviews/week?${query}`)).body;
const open = async (asker: Asker, plant: string[], start: string): Promise<Review> =>
  (await asker.post('/api/v1/reviews', { plant, start })).body;
const decision = (plantId: string, ownerId: string, more: object = {}) => ({
  plantId,
  ownerId,
  kind: 'corrective',
  title: 'Replace the worn die',
  dueOn: '2026-06-19',
  ...more,
});
const figuresOf = ({ decisions: _, ...figures }: ReviewContent) => figures;

test('a live review says what the other pages say', async () => {
  const { state, content, isOver, mayWrite } = await week(viewer);
  expect({ state, isOver, mayWrite }).toEqual({ state: 'live', isOver: true, mayWrite: false });
  const { body: of } = await viewer.get('/api/v1/week');
  const { headlines, topCauses: causes, costliest, decisions: waiting, gaps, period, compared } = of;
  // Links name the plant that the review is about; the week of all of one's plants does not.
  const unlinked = (rows: { filter?: string; link?: string }[]) => rows.map(({ filter: _, link: __, ...row }) => row);
  expect(content).toMatchObject({ period, compared, costliest });
  expect(unlinked(content.headlines)).toEqual(unlinked(headlines));
  expect(unlinked(content.causes)).toEqual(unlinked(causes));
  expect(unlinked(content.waiting)).toEqual(unlinked(waiting));
  expect(unlinked(content.gaps)).toEqual(unlinked(gaps));
  const quarter = `plant=${lisbon}&from=2026-03-16&to=2026-06-15`;
  const { body: gates } = await viewer.get(`/api/v1/analyses/gates?${quarter}`);
  expect(content.escapes.next).toEqual(gates.next);
  expect(content.escapes.gates.map(({ effectiveness }) => effectiveness)).toEqual(
    gates.gates.map(({ effectiveness }: { effectiveness: unknown }) => effectiveness),
  );
  const { body: signals } = await viewer.get(`/api/v1/analyses/signals?${quarter}`);
  expect(content.signals.tested).toBe(signals.tested);
  expect(content.signals.list.map(({ key }) => key)).toEqual(
    signals.signals.slice(0, 6).map(({ key }: { key: string }) => key),
  );
  // Four reports of the week have an origin: 2 → 6 twice passes 3, 4 and 5; 4 → 5 passes none; 4 → 10 passes 5 to 9.
  expect(content.escapes.known).toBe(4);
  expect(content.escapes.passed.map(({ gates: passed, reports }) => [passed, reports])).toEqual([
    [1, 3],
    [2, 3],
    [3, 3],
  ]);
});

test('every figure that opens reports opens as many as it says', async () => {
  const { content } = await week(viewer);
  const counted = [
    ...content.causes.map(({ filter, reports }) => [filter, reports] as const),
    ...content.escapes.passed.map(({ filter, reports }) => [filter, reports] as const),
    ...content.escapes.routes.map(({ filter, reports }) => [filter, reports] as const),
    ...content.signals.list.map(({ filter, observed }) => [filter, observed] as const),
    ...[...content.gaps, ...content.waiting]
      .filter(({ link }) => link.startsWith('/failures?'))
      .map(({ link, count }) => [link.slice('/failures?'.length), count] as const),
  ];
  expect(counted.length).toBeGreaterThan(10);
  for (const [filter, count] of counted) {
    const { body } = await viewer.get(`/api/v1/failures/count?${filter}`);
    expect([filter, body.reports]).toEqual([filter, count]);
  }
});

test('decided, closed, and from then on as it was shown', async () => {
  const opened = await open(manager, [lisbon], '2026-06-08');
  expect(opened).toMatchObject({ state: 'open', edition: 1, openedBy: manager.name, version: 1 });
  const again = await manager.post('/api/v1/reviews', { plant: [lisbon], start: '2026-06-10' });
  expect(again.status).toBe(409);

  const path = `/api/v1/reviews/${opened.id}`;
  const decided = await manager.post(`${path}/decisions`, decision(lisbon, manager.id));
  expect(decided.status).toBe(201);
  expect(decided.body.content.decisions).toMatchObject([{ title: 'Replace the worn die', owner: manager.name }]);
  const { body: actions } = await manager.get(`/api/v1/actions?review=${opened.id}`);
  expect(actions.items).toHaveLength(1);

  // Whoever still sees the page without the decision cannot close it.
  expect((await manager.put(`${path}/closed`, {}, 1)).status).toBe(412);
  const closed = await manager.put(`${path}/closed`, {}, decided.body.version);
  expect(closed.body).toMatchObject({ state: 'closed', closedBy: manager.name, intact: true });

  const moreReports = [{ plantId: lisbon, foundOn: '2026-06-09', cause: 'tooling' as const, origin: 2, found: 6 }];
  await addReports(it.db, moreReports);
  await manager.put(`/api/v1/actions/${actions.items[0].id}/state`, { state: 'given_up', reason: 'no die left' }, 1);
  it.time.now = new Date('2027-06-15T07:00:00Z');
  const later = await it.as('viewer', [lisbon]);
  const nextYear = await week(later, `plant=${lisbon}&start=2026-06-08`);
  expect(nextYear.content).toEqual(closed.body.content);
  expect(nextYear.content.decisions[0]!.state).toBe('agreed');
  expect(nextYear.hash).toBe(closed.body.hash);
  const live = await week(later, `plant=${lisbon}&start=2026-06-08&live=true`);
  expect(live.content.headlines[0]!.figure.value).toBe(nextYear.content.headlines[0]!.figure.value! + 1);
  it.time.now = new Date('2026-06-15T07:00:00Z');

  for (const [change, body] of [
    ['figures', {}],
    ['closed', {}],
  ] as const)
    expect((await manager.put(`${path}/${change}`, body, closed.body.version)).status).toBe(409);
  expect((await manager.post(`${path}/decisions`, decision(lisbon, manager.id))).status).toBe(409);
  await expect(
    execute(it.db.pool, sql`update review set content = '{}' where id = ${opened.id}::uuid`),
  ).rejects.toThrow('never changed');
  await expect(execute(it.db.pool, sql`delete from review where id = ${opened.id}::uuid`)).rejects.toThrow(
    'never changed',
  );
});

test('a correction is a new edition with figures of now, beside the closed one', async () => {
  const first = await week(manager, `plant=${lisbon}&start=2026-06-08`);
  const path = `/api/v1/reviews/${first.id}`;
  expect((await manager.post(`${path}/editions`, { reason: 'x' })).status).toBe(400);
  const { status, body: second } = await manager.post(`${path}/editions`, { reason: 'One report came late.' });
  expect(status).toBe(201);
  expect(second).toMatchObject({ edition: 2, state: 'open', reason: 'One report came late.' });
  expect(second.content.headlines[0].figure.value).toBe(first.content.headlines[0]!.figure.value! + 1);
  expect(second.content.decisions).toHaveLength(1);
  expect((await manager.post(`${path}/editions`, { reason: 'Once more.' })).status).toBe(409);
  const { body: old } = await viewer.get(path);
  expect(figuresOf(old.content)).toEqual(figuresOf(first.content));
  expect(old.editions.map(({ edition, state }: Review) => [edition, state])).toEqual([
    [2, 'open'],
    [1, 'closed'],
  ]);
  const shown = await week(viewer, `plant=${lisbon}&start=2026-06-08`);
  expect(shown.id).toBe(second.id);
  await manager.put(`/api/v1/reviews/${second.id}/closed`, {}, second.version);
});

test('what one review promised, the next one asks for', async () => {
  const monday = '2026-06-22T07:00:00Z';
  const review = await open(manager, [lisbon], '2026-05-25');
  const path = `/api/v1/reviews/${review.id}/decisions`;
  const titles = ['kept', 'kept_late', 'broken', 'not_due', 'given_up'];
  const ids: Record<string, string> = {};
  for (const title of titles) {
    const dueOn = title === 'not_due' ? '2026-07-31' : title === 'kept_late' ? '2026-06-16' : '2026-06-19';
    const { body } = await manager.post(path, decision(lisbon, manager.id, { title, dueOn }));
    ids[title] = body.content.decisions.find((one: { title: string }) => one.title === title).id;
  }
  const carryOut = async (title: string, on: string) => {
    it.time.now = new Date(`${on}T09:00:00Z`);
    await manager.post(`/api/v1/actions/${ids[title]}/evidence`, { text: 'seen on the line' });
    const { status } = await manager.put(`/api/v1/actions/${ids[title]}/state`, { state: 'carried_out' }, 1);
    expect(status).toBe(200);
  };
  await carryOut('kept', '2026-06-18');
  await carryOut('kept_late', '2026-06-18');
  await manager.put(`/api/v1/actions/${ids.given_up}/state`, { state: 'given_up', reason: 'not needed' }, 1);
  it.time.now = new Date(monday);
  const { content } = await week(viewer, `plant=${lisbon}`);
  const told = content.promises.filter(({ title }) => titles.includes(title));
  expect(told.map(({ title, promise }) => [title, promise])).toEqual([
    ['broken', 'broken'],
    ['given_up', 'given_up'],
    ['kept_late', 'kept_late'],
    ['kept', 'kept'],
    ['not_due', 'not_due'],
  ]);
  expect(content.actions.list.map(({ title }) => title)).toContain('broken');
  it.time.now = new Date('2026-06-15T07:00:00Z');
});

test('a review is seen by those who may read all of its plants, and nobody else', async () => {
  const chief = await it.as('manager');
  const both = await it.as('viewer', [lisbon, porto]);
  const group = await open(chief, [], '2026-05-11');
  const pair = await open(chief, [lisbon, porto], '2026-05-11');
  expect(group.content).toMatchObject({ group: true });
  expect(pair.content).toMatchObject({ group: false });
  expect(pair.id).not.toBe(group.id);
  const reads = async (asker: Asker, id: string | null) => (await asker.get(`/api/v1/reviews/${id}`)).status;
  expect([await reads(viewer, pair.id), await reads(both, pair.id), await reads(both, group.id)]).toEqual([
    404, 200, 404,
  ]);
  expect((await viewer.get(`/api/v1/reviews/${pair.id}/document`)).status).toBe(404);
  const listed = async (asker: Asker) =>
    (await asker.get('/api/v1/reviews?limit=100')).body.items.map(({ id }: { id: string }) => id);
  expect(await listed(both)).toContain(pair.id);
  expect(await listed(both)).not.toContain(group.id);
  expect(await listed(viewer)).not.toContain(pair.id);
  expect((await viewer.get(`/api/v1/reviews/week?plant=${porto}`)).status).toBe(404);
  // A manager of one of the plants reads with both but decides for neither.
  const half = await it.as('manager', [porto]);
  await it.db.prisma.roleGrant.create({
    data: { id: crypto.randomUUID(), personId: half.id, role: 'viewer', plantId: lisbon },
  });
  expect((await half.post(`/api/v1/reviews/${pair.id}/decisions`, decision(porto, half.id))).status).toBe(403);
  // What is decided at one plant's review belongs to that plant.
  const own = await open(manager, [lisbon], '2026-05-11');
  expect((await manager.post(`/api/v1/reviews/${own.id}/decisions`, decision(porto, manager.id))).status).toBe(422);
});

test('a week that is not over is read but not kept', async () => {
  const running = await week(manager, `plant=${lisbon}&start=2026-06-15`);
  expect(running).toMatchObject({ state: 'live', isOver: false });
  const { status, body } = await manager.post('/api/v1/reviews', { plant: [lisbon], start: '2026-06-15' });
  expect([status, body.code]).toEqual([422, 'not_consistent']);
});

test('the page in the database cannot be exchanged unseen', async () => {
  const review = await open(manager, [lisbon], '2026-04-06');
  await execute(
    it.db.pool,
    sql`update review set content = replace(content, '"schema":1', '"schema": 1') where id = ${review.id}::uuid`,
  );
  expect((await week(manager, `plant=${lisbon}&start=2026-04-06`)).intact).toBe(false);
  expect((await manager.put(`/api/v1/reviews/${review.id}/closed`, {}, 1)).status).toBe(409);
});

test('prints in the plant’s language, or another one asked for', async () => {
  const review = await week(viewer, `plant=${lisbon}&start=2026-06-08`);
  const { status, headers, raw } = await viewer.get(`/api/v1/reviews/${review.id}/document?locale=de&paper=Letter`);
  expect([status, headers['content-type']]).toEqual([200, 'application/pdf']);
  expect(headers['content-disposition']).toBe('inline; filename="besprechung-LIS-2026-W24.pdf"');
  expect(raw.toString('latin1')).toMatch(/MediaBox \[0 0 612 792\]/);
  const live = await viewer.get('/api/v1/reviews/week/document?live=true');
  expect(live.headers['content-disposition']).toBe('inline; filename="review-LIS-2026-W24.pdf"');
});
