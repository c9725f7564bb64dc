/** Actions from agreement to verification, reminders, and the calendar feed. */
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { remindOwners } from '#api/features/actions/reminders.job.ts';
import { newId } from '#api/platform/ids.ts';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { addReports } from '#tests/support/facts.ts';
import * as make from '#tests/support/master-data.ts';
import { form } from '#tests/support/requests/reports.ts';

const url = '/api/v1/actions';
const now = '2026-06-15T10:00:00Z';
let it: TestApp;
let plant: { id: string; code: string };
let other: { id: string };
let owner: Asker;
let second: Asker;
let manager: Asker;

beforeAll(async () => {
  it = await createTestApp();
  plant = await make.makePlant(it.db, { code: 'LIS' });
  other = await make.makePlant(it.db);
  owner = await it.as('engineer', [plant.id], 'de');
  second = await it.as('engineer', [plant.id]);
  manager = await it.as('manager', [plant.id]);
});
beforeEach(() => {
  it.time.now = new Date(now);
});
afterAll(() => it.close());

const input = (fields: object = {}) => ({
  plantId: plant.id,
  kind: 'corrective',
  title: 'Replace the applicator',
  ownerId: owner.id,
  dueOn: '2026-06-20',
  ...fields,
});
const open = async (fields: object = {}, by = manager) => (await by.post(url, input(fields))).body;
const move = (id: string, version: number, state: string, reason?: string, by = owner) =>
  by.put(`${url}/${id}/state`, { state, ...(reason && { reason }) }, version);
const evidence = (id: string, by = owner) => by.post(`${url}/${id}/evidence`, { text: 'new applicator AP-9 fitted' });
const verify = (id: string, version: number, by: Asker, passed = true) =>
  by.put(`${url}/${id}/verification`, { passed, note: 'measured twenty crimps' }, version);
const carriedOut = async (fields: object = {}) => {
  const action = await open(fields);
  await evidence(action.id);
  return (await move(action.id, action.version, 'carried_out')).body;
};
const noticesOf = async (asker: Asker) => (await asker.get('/api/v1/notices')).body.items;

test('an action goes from agreement over evidence to verification by somebody else, each step kept', async () => {
  const action = await open({ effortHours: 6.5, cost: { amountMinor: 125_000, currency: 'EUR' } });
  expect(action).toMatchObject({
    number: expect.stringMatching(/^LIS-A26-\d{4}$/),
    state: 'agreed',
    owner: owner.name,
    daysOpen: 0,
    effortHours: 6.5,
    cost: { amountMinor: 125_000, currency: 'EUR' },
  });
  const early = await move(action.id, action.version, 'carried_out');
  expect(early.body).toMatchObject({ status: 409, detail: expect.stringContaining('evidence') });
  await evidence(action.id);
  const done = (await move(action.id, action.version, 'carried_out')).body;
  expect(done).toMatchObject({ state: 'carried_out', carriedOutOn: '2026-06-15', mayVerify: false });
  expect((await second.get(`${url}/${action.id}`)).body.mayVerify).toBe(true);
  const verified = (await verify(action.id, done.version, second)).body;
  expect(verified).toMatchObject({ state: 'verified', verifiedBy: second.name, closedOn: '2026-06-15' });
  expect(verified.steps.map((step: { state: string }) => step.state)).toEqual(['agreed', 'carried_out', 'verified']);
  const trail = await it.db.prisma.auditEntry.findMany({ where: { entity: 'action', entityId: action.id } });
  expect(trail.map((entry) => entry.action).sort()).toEqual(['evidence added', 'moved', 'opened', 'verified']);
});

test('the owner never verifies, nor who carried it out, nor a machine, and no state but the verification closes it', async () => {
  const done = await carriedOut();
  expect((await verify(done.id, done.version, owner)).status).toBe(403);

  const other = await open();
  await evidence(other.id);
  const bySecond = (await move(other.id, other.version, 'carried_out', undefined, second)).body;
  expect((await verify(other.id, bySecond.version, second)).status).toBe(403);
  expect((await verify(other.id, bySecond.version, manager)).status).toBe(200);

  const fresh = await open();
  expect((await verify(fresh.id, fresh.version, second)).status).toBe(409);
  expect((await move(fresh.id, fresh.version, 'verified')).status).toBe(400);
  const tricked = it.db.prisma.action.update({
    where: { id: done.id },
    data: { state: 'verified', verifiedBy: owner.id, verification: 'by myself' },
  });
  await expect(tricked).rejects.toThrow();
});

test('holding up, giving up and opening again take a reason; a refused verification sends it back to its owner', async () => {
  const action = await open();
  expect((await move(action.id, action.version, 'held_up')).body).toMatchObject({
    status: 422,
    code: 'not_consistent',
  });
  const held = (await move(action.id, action.version, 'held_up', 'spare part on order')).body;
  expect(held).toMatchObject({ state: 'held_up', stateReason: 'spare part on order' });
  await evidence(action.id);
  const done = (await move(action.id, held.version, 'carried_out')).body;
  const back = (await verify(action.id, done.version, second, false)).body;
  expect(back).toMatchObject({ state: 'under_way', stateReason: 'measured twenty crimps', carriedOutOn: null });
  const again = (await move(action.id, back.version, 'carried_out')).body;
  const verified = (await verify(action.id, again.version, second)).body;
  expect((await move(action.id, verified.version, 'under_way')).status).toBe(422);
  const reopened = (await move(action.id, verified.version, 'under_way', 'seen again on line 3')).body;
  expect(reopened).toMatchObject({ state: 'under_way', reopened: 1, verifiedBy: null, closedOn: null });
  expect((await noticesOf(owner)).map((one: { kind: string }) => one.kind)).toContain('action_sent_back');
});

test('of two people changing one action at once, one is told to look again', async () => {
  const action = await open();
  const change = (title: string) => {
    const { plantId: _, ...fields } = input({ title });
    return manager.put(`${url}/${action.id}`, fields, action.version);
  };
  const answers = await Promise.all([change('First'), change('Second')]);
  expect(answers.map(({ status }) => status).sort()).toEqual([200, 412]);
  const done = await carriedOut();
  const both = await Promise.all([verify(done.id, done.version, second), verify(done.id, done.version, manager)]);
  expect(both.map(({ status }) => status).sort()).toEqual([200, expect.any(Number)]);
  expect((await it.db.prisma.action.findUniqueOrThrow({ where: { id: done.id } })).version).toBe(done.version + 1);
});

test('bad input says what to do and changes nothing', async () => {
  const stranger = await it.as('engineer', [other.id]);
  const before = await it.db.prisma.action.count();
  const wrong: [object, number, string][] = [
    [{ ownerId: stranger.id }, 422, 'ownerId'],
    [{ dueOn: '2026-06-14' }, 422, 'dueOn'],
    [{ complaintId: newId() }, 422, 'complaintId'],
    [{ caseId: newId() }, 422, 'caseId'],
    [{ title: '' }, 400, 'title'],
    [{ kind: 'hope' }, 400, 'kind'],
    [{ cost: { amountMinor: -1, currency: 'EUR' } }, 400, 'cost'],
    [{ plantId: other.id }, 404, ''],
  ];
  for (const [fields, status, path] of wrong) {
    const answer = await manager.post(url, input(fields));
    expect(answer.status, JSON.stringify(fields)).toBe(status);
    expect(JSON.stringify(answer.body)).toContain(path);
  }
  expect(await it.db.prisma.action.count()).toBe(before);
});

test('a repeated send with the same key or id opens one action', async () => {
  const id = newId();
  const headers = { 'idempotency-key': 'action-once-1' };
  const first = await manager.post(url, input({ id }), { headers });
  expect((await manager.post(url, input({ id }), { headers })).body.number).toBe(first.body.number);
  expect((await manager.post(url, input({ id }))).body.number).toBe(first.body.number);
});

test('the walls hold: a foreign plant sees nothing of an action, its files, its counts', async () => {
  const action = await open({ title: 'Behind the wall' });
  const { payload, contentType } = form('file', 'protokoll über.txt', 'text/plain', Buffer.from('Kraft 61 N'));
  const file = await owner.post(`${url}/${action.id}/files`, '', { payload, headers: { 'content-type': contentType } });
  expect(file.body).toMatchObject({ kind: 'file', fileName: 'protokoll über.txt', bytes: 10 });
  const read = await second.get(`/api/v1/action-files/${file.body.id}`);
  expect(read.raw.toString()).toBe('Kraft 61 N');
  expect(read.headers['content-disposition']).toContain('attachment');

  const foreign = await it.as('administrator', [other.id]);
  for (const path of [`${url}/${action.id}`, `${url}/${action.id}/effect`, `/api/v1/action-files/${file.body.id}`])
    expect((await foreign.get(path)).status, path).toBe(404);
  expect((await foreign.get(`${url}?q=wall`)).body.items).toEqual([]);
  expect((await foreign.get(`${url}/count`)).body.all).toBe(0);
  expect((await move(action.id, action.version, 'under_way', undefined, foreign)).status).toBe(404);
  expect((await foreign.get(`${url}?plant=${plant.id}`)).status).toBe(404);
});

test('evidence names reports of the plant only, takes no programs, and stays once it was carried out on it', async () => {
  const [report, strange] = await addReports(it.db, [
    { plantId: plant.id, foundOn: '2026-06-10' },
    { plantId: other.id, foundOn: '2026-06-10' },
  ]);
  const action = await open();
  const link = (failureId: string) => owner.post(`${url}/${action.id}/evidence`, { failureId });
  expect((await link(strange!)).body.code).toBe('unknown_reference');
  const linked = (await link(report!)).body;
  expect(linked).toMatchObject({ kind: 'report', failureId: report, failureNumber: `T-${report}` });
  const program = form('file', 'photo.jpg', 'image/jpeg', Buffer.from('MZ\x90\x00\x03\x00\xff\xff', 'latin1'));
  const refused = await owner.post(`${url}/${action.id}/files`, '', {
    payload: program.payload,
    headers: { 'content-type': program.contentType },
  });
  expect(refused.status).toBe(415);
  const done = (await move(action.id, action.version, 'carried_out')).body;
  expect((await owner.delete(`/api/v1/action-evidence/${linked.id}`)).status).toBe(409);
  await move(action.id, done.version, 'under_way', 'forgot the second tool');
  expect((await owner.delete(`/api/v1/action-evidence/${linked.id}`)).status).toBe(204);
});

test('the list pages by due day, filters in every way, and is exported as it is shown', async () => {
  const mine = await it.as('engineer', [plant.id]);
  for (let day = 16; day < 21; day++) await open({ ownerId: mine.id, title: `=1+${day}`, dueOn: `2026-06-${day}` });
  it.time.now = new Date('2026-06-18T10:00:00Z');
  const first = (await mine.get(`${url}?owner=me&limit=2`)).body;
  const rest = (await mine.get(`${url}?owner=me&limit=200&cursor=${first.next}`)).body;
  const all = [...first.items, ...rest.items];
  expect(all.map((row) => row.dueOn)).toEqual([16, 17, 18, 19, 20].map((day) => `2026-06-${day}`));
  expect(all.map((row) => row.daysOverdue)).toEqual([2, 1, 0, 0, 0]);
  expect(all.every((row) => row.daysOpen === 3)).toBe(true);
  const count = (await mine.get(`${url}/count?owner=me`)).body;
  expect(count).toMatchObject({ all: 5, open: 5, overdue: 2, reopened: 0 });
  expect(count.ageing[0]).toEqual({ days: '0-13', actions: 5 });
  expect((await mine.get(`${url}?owner=me&overdue=true`)).body.items).toHaveLength(2);
  expect((await mine.get(`${url}?owner=me&dueFrom=2026-06-19&dueTo=2026-06-20`)).body.items).toHaveLength(1);
  expect((await mine.get(`${url}?owner=me&state=verified`)).body.items).toEqual([]);
  const csv = (await mine.get(`${url}/export?owner=me&format=csv`)).body as string;
  expect(csv.trim().split('\r\n')).toHaveLength(6);
  expect(csv).toContain("'=1+16");
});

test('owners are reminded before the day, on it and weekly after it, once each, in their language, by mail too', async () => {
  const action = await open({ title: 'Erinnern', dueOn: '2026-06-25' });
  const told = async () =>
    (await it.db.prisma.notice.findMany({ where: { link: `/actions/${action.id}` }, orderBy: { id: 'asc' } })).map(
      (one) => one.kind,
    );
  const at = async (time: string) => {
    for (let again = 0; again < 2; again++) await remindOwners(it.app, new Date(time));
    return (await told()).slice(1);
  };
  expect(await at('2026-06-21T12:00:00Z')).toEqual([]);
  expect(await at('2026-06-22T12:00:00Z')).toEqual(['action_due_soon']);
  expect(await at('2026-06-24T12:00:00Z')).toEqual(['action_due_soon']);
  // the plant is in Lisbon, where it is five in the morning at four UTC
  expect(await at('2026-06-25T04:00:00Z')).toEqual(['action_due_soon']);
  const today = ['action_due_soon', 'action_due_today'];
  expect(await at('2026-06-25T05:30:00Z')).toEqual(today);
  expect(await at('2026-06-26T12:00:00Z')).toEqual([...today, 'action_overdue']);
  expect(await at('2026-07-02T12:00:00Z')).toEqual([...today, 'action_overdue']);
  expect(await at('2026-07-03T12:00:00Z')).toEqual([...today, 'action_overdue', 'action_overdue']);
  const mails = await it.db.prisma.mail.findMany({ where: { link: `/actions/${action.id}` }, orderBy: { id: 'asc' } });
  expect(mails.map(({ subject }) => subject)).toEqual([
    expect.stringContaining('liegt bei Ihnen'),
    expect.stringContaining('25.06.2026'),
    expect.stringContaining('ist heute fällig'),
    expect.stringContaining('seit 1 Tagen überfällig'),
    expect.stringContaining('seit 8 Tagen überfällig'),
  ]);
});

test('two servers reminding at once tell once, and who wants no mail gets none', async () => {
  const quiet = await it.as('engineer', [plant.id]);
  await quiet.put('/api/v1/notices/preferences', { mail: false }, 1);
  const action = await open({ ownerId: quiet.id, dueOn: '2026-06-15' });
  const at = new Date('2026-06-15T12:00:00Z');
  await Promise.all([remindOwners(it.app, at), remindOwners(it.app, at), remindOwners(it.app, at)]);
  const notices = await noticesOf(quiet);
  expect(notices.map((one: { kind: string }) => one.kind)).toEqual(['action_due_today', 'action_assigned']);
  expect(await it.db.prisma.mail.count({ where: { link: `/actions/${action.id}` } })).toBe(0);
  expect((await quiet.get('/api/v1/notices/count')).body).toEqual({ unread: 2 });
  expect((await second.put(`/api/v1/notices/${notices[0].id}/read`, {}, 1)).status).toBe(404);
  await quiet.put(`/api/v1/notices/${notices[0].id}/read`, {}, 1);
  expect((await quiet.get('/api/v1/notices?unread=true')).body.items).toHaveLength(1);
  await quiet.put('/api/v1/notices/read', {}, 1);
  expect((await quiet.get('/api/v1/notices/count')).body).toEqual({ unread: 0 });
});

test('the calendar feed shows open actions under lasting identities, and an old address stops working', async () => {
  const busy = await it.as('engineer', [plant.id]);
  const action = await open({ ownerId: busy.id, title: 'Order; trays, twice', dueOn: '2026-07-03' });
  const renew = async () => new URL((await busy.put('/api/v1/calendar-feed', {}, 1)).body.url).pathname;
  const path = await renew();
  const read = async (address: string) => it.app.inject({ method: 'GET', url: address });
  const text = (await read(path)).body.replaceAll('\r\n ', '');
  expect(text).toContain(`UID:action-${action.id}@escape-ledger`);
  expect(text).toContain('DTSTART;VALUE=DATE:20260703');
  expect(text).toContain(`SUMMARY:${action.number} Order\\; trays\\, twice`);
  await move(action.id, action.version, 'given_up', 'not needed any more', busy);
  expect((await read(path)).body).not.toContain(action.id);
  const next = await renew();
  expect((await read(path)).statusCode).toBe(404);
  expect((await read(next)).statusCode).toBe(200);
  await busy.delete('/api/v1/calendar-feed');
  expect((await read(next)).statusCode).toBe(404);
});
