import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { escalateClocks } from '#api/features/complaints/escalation.service.ts';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { addReports } from '#tests/support/facts.ts';
import * as make from '#tests/support/master-data.ts';

let it: TestApp;
let plant: Awaited<ReturnType<typeof make.makePlant>>;
let other: typeof plant;
let customer: Awaited<ReturnType<typeof make.makeCustomer>>;
let engineer: Asker;
let second: Asker;
let manager: Asker;
let safety: Asker;
let stranger: Asker;

/** Monday 15 June 2026, 11:00 in Lisbon; the usual hours are Monday to Friday, 8:00 to 16:30. */
const monday = new Date('2026-06-15T10:00:00Z');
const url = (id: string, more = '') => `/api/v1/complaints/${id}${more}`;

beforeAll(async () => {
  it = await createTestApp();
  plant = await make.makePlant(it.db, { code: 'LIS' });
  other = await make.makePlant(it.db, { code: 'OSA', zone: 'Asia/Tokyo', currency: 'JPY' });
  customer = await make.makeCustomer(it.db, { code: 'CUST' });
  engineer = await it.as('engineer', [plant.id]);
  second = await it.as('engineer', [plant.id]);
  manager = await it.as('manager', [plant.id]);
  safety = await it.as('engineer', [plant.id]);
  stranger = await it.as('manager', [other.id]);
  const named = await manager.put(`/api/v1/plants/${plant.id}/product-safety`, { personId: safety.id }, 1);
  expect(named.status).toBe(200);
});
afterAll(() => it.close());
beforeEach(() => {
  it.time.now = monday;
});

const record = async (more: object = {}, by = engineer) => {
  const answer = await by.post('/api/v1/complaints', {
    plantId: plant.id,
    customerId: customer.id,
    title: 'Terminal backs out of cavity A3',
    receivedAt: monday.toISOString(),
    ...more,
  });
  expect(answer.status, JSON.stringify(answer.body)).toBe(201);
  return answer.body;
};
// biome-ignore lint/suspicious/noExplicitAny: bodies of answers
const clockOf = (complaint: any, kind: string) => complaint.clocks.find((clock: any) => clock.kind === kind);
const answerAll = async (id: string) => {
  for (const kind of ['first_reply', 'containment', 'cause', 'corrective_action'])
    await engineer.put(url(id, `/clocks/${kind}/answered`), { sent: 'our letter' }, 1);
};
const noticesOf = async ({ id }: Asker, kind: string) => it.db.prisma.notice.count({ where: { personId: id, kind } });

describe('intake', () => {
  test('numbers by plant and year and starts the clocks of the customer in plant time', async () => {
    const first = await record();
    const next = await record();
    expect(first.number).toMatch(/^LIS-C26-\d{4}$/);
    expect(Number(next.number.slice(-4))).toBe(Number(first.number.slice(-4)) + 1);
    // one working day: Tuesday 16:30 in Lisbon is 15:30 UTC in summer; ten: Monday 29 June
    expect(clockOf(first, 'first_reply').dueAt).toBe('2026-06-16T15:30:00.000Z');
    expect(clockOf(first, 'cause').dueAt).toBe('2026-06-29T15:30:00.000Z');
    expect(clockOf(first, 'first_reply')).toMatchObject({ state: 'running', ownerId: engineer.id });
  });
  test('takes the lengths that the customer has in the master data', async () => {
    const times = { first_reply: { amount: 4, unit: 'hours' } };
    const usual = {
      containment: { amount: 2, unit: 'days' },
      cause: { amount: 3, unit: 'days' },
      corrective_action: { amount: 9, unit: 'days' },
    };
    const strict = await make.makeCustomer(it.db, { replyTimes: { ...times, ...usual } });
    const complaint = await record({ customerId: strict.id });
    expect(clockOf(complaint, 'first_reply').dueAt).toBe('2026-06-15T14:00:00.000Z');
  });
  test.each([
    [{ receivedAt: '2026-06-16T10:00:00Z' }, 'body/receivedAt'],
    [{ receivedAt: '2012-06-16T10:00:00Z' }, 'body/receivedAt'],
    [{ foundOn: '2026-06-17' }, 'body/foundOn'],
    [{ builtOn: '2026-06-10', foundOn: '2026-06-09' }, 'body/foundOn'],
    [{ customerId: '0197a000-0000-7000-8000-000000000000' }, 'body/customerId'],
    [{ quantity: 0 }, 'body/quantity'],
  ])('refuses %j and says where', async (more, path) => {
    const before = await it.db.prisma.complaint.count();
    const body = { plantId: plant.id, customerId: customer.id, title: 'Loose', receivedAt: monday.toISOString() };
    const answer = await engineer.post('/api/v1/complaints', { ...body, ...more });
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(answer.status).toBeLessThan(500);
    expect(answer.body.errors[0].path).toBe(path);
    expect(await it.db.prisma.complaint.count()).toBe(before);
  });
  test('sent twice under one key is recorded once', async () => {
    const body = { plantId: plant.id, customerId: customer.id, title: 'Sent twice', receivedAt: monday.toISOString() };
    const extra = { headers: { 'idempotency-key': 'intake-0001' } };
    const [first, again] = [
      await engineer.post('/api/v1/complaints', body, extra),
      await engineer.post('/api/v1/complaints', body, extra),
    ];
    expect(again.body.id).toBe(first.body.id);
  });
});

describe('clocks', () => {
  test('stop with a reason, keep what was left over a holiday, and run on', async () => {
    const { id } = await record();
    const paused = await engineer.put(url(id, '/clocks/first_reply/paused'), { reason: 'parts are under way' }, 1);
    expect(clockOf(paused.body, 'first_reply')).toMatchObject({ state: 'paused', minutesLeft: 840 });
    it.time.now = new Date('2026-06-19T07:00:00Z');
    const resumed = await engineer.put(url(id, '/clocks/first_reply/resumed'), {}, 2);
    // 14 h of work from Friday 8:00 on: 8.5 h on Friday, 5.5 h on Monday
    expect(clockOf(resumed.body, 'first_reply').dueAt).toBe('2026-06-22T12:30:00.000Z');
    const calendar = await manager.get(`/api/v1/plants/${plant.id}/calendar`);
    const holiday = { hours: calendar.body.hours, holidays: [{ day: '2026-06-22', name: 'Town feast' }] };
    const saved = await manager.put(`/api/v1/plants/${plant.id}/calendar`, holiday, calendar.body.version);
    expect(saved.status).toBe(200);
    expect(clockOf((await engineer.get(url(id))).body, 'first_reply').dueAt).toBe('2026-06-23T12:30:00.000Z');
    await manager.put(`/api/v1/plants/${plant.id}/calendar`, { ...holiday, holidays: [] }, saved.body.version);
    expect(clockOf((await engineer.get(url(id))).body, 'first_reply').dueAt).toBe('2026-06-22T12:30:00.000Z');
  });
  test('cannot be stopped without a reason, twice, or once they ran out', async () => {
    const { id } = await record();
    expect((await engineer.put(url(id, '/clocks/cause/paused'), { reason: ' ' }, 1)).status).toBe(400);
    await engineer.put(url(id, '/clocks/cause/paused'), { reason: 'waiting for parts' }, 1);
    expect((await engineer.put(url(id, '/clocks/cause/paused'), { reason: 'again' }, 2)).status).toBe(409);
    it.time.now = new Date('2026-06-17T08:00:00Z');
    const late = await engineer.put(url(id, '/clocks/first_reply/paused'), { reason: 'too late for that' }, 1);
    expect(late.status).toBe(409);
    expect(clockOf((await engineer.get(url(id))).body, 'first_reply').state).toBe('overdue');
  });
  test('are answered once, with what was sent; the loser of a race changes nothing', async () => {
    const { id } = await record();
    const send = (sent: string, by: Asker) => by.put(url(id, '/clocks/first_reply/answered'), { sent }, 1);
    const answers = await Promise.all([send('letter one', engineer), send('letter two', second)]);
    expect(answers.map(({ status }) => status).sort()).toEqual([
      200,
      expect.toSatisfy((status) => status === 409 || status === 412),
    ]);
    const clock = clockOf((await engineer.get(url(id))).body, 'first_reply');
    expect(clock.state).toBe('answered_in_time');
    expect(clock.events.filter(({ step }: { step: string }) => step === 'answered')).toHaveLength(1);
  });
  test('judge a reply by when it went out', async () => {
    const { id } = await record();
    it.time.now = new Date('2026-06-18T08:00:00Z');
    const send = (kind: string, answeredAt: string | null) =>
      engineer.put(url(id, `/clocks/${kind}/answered`), { sent: 'by telephone', answeredAt }, 1);
    expect(clockOf((await send('first_reply', '2026-06-16T09:00:00Z')).body, 'first_reply').state).toBe(
      'answered_in_time',
    );
    expect(clockOf((await send('containment', null)).body, 'containment').state).toBe('answered_late');
    expect((await send('cause', '2026-06-19T00:00:00Z')).status).toBe(422);
    expect((await send('cause', '2026-06-14T00:00:00Z')).status).toBe(422);
  });
  test('tell the owner, then the managers, each once', async () => {
    const { id, clocks } = await record();
    const handed = await engineer.put(url(id, '/clocks/first_reply/owner'), { ownerId: second.id }, 1);
    expect(clockOf(handed.body, 'first_reply').ownerName).toBe(second.name);
    expect(await noticesOf(second, 'clock_handed_over')).toBe(1);
    // 14 h in all: a quarter left from Tuesday 13:00 on, a tenth from 15:06 (Lisbon)
    const told = async (at: string) => {
      it.time.now = new Date(at);
      await escalateClocks(it, it.time.now);
      await escalateClocks(it, it.time.now);
      const about = { contains: clocks[0].id };
      const count = (kind: string) => it.db.prisma.notice.count({ where: { kind, key: about } });
      return [await count('clock_short'), await count('clock_urgent')];
    };
    expect(await told('2026-06-16T11:50:00Z')).toEqual([0, 0]);
    expect(await told('2026-06-16T12:10:00Z')).toEqual([1, 0]);
    expect(await told('2026-06-16T14:10:00Z')).toEqual([1, 2]);
    const mails = await it.db.prisma.mail.count({ where: { subject: { contains: 'about to be late' } } });
    expect(mails).toBeGreaterThanOrEqual(2);
  });
});

describe('the desk', () => {
  test('sorts by the clock that runs out first and pages by it without loss', async () => {
    await record({ title: 'Received on Friday', receivedAt: '2026-06-12T10:00:00Z' });
    const all: { id: string; title: string; next: { dueAt: string } | null }[] = [];
    let cursor = '';
    do {
      const page = (await engineer.get(`/api/v1/complaints?limit=2${cursor && `&cursor=${cursor}`}`)).body;
      all.push(...page.items);
      cursor = page.next ?? '';
    } while (cursor);
    const whole = (await engineer.get('/api/v1/complaints?limit=200')).body;
    expect(all.map(({ id }) => id)).toEqual(whole.items.map(({ id }: { id: string }) => id));
    expect(whole.counts.open).toBe(all.length);
    const running = whole.items.flatMap((line: { next: { state: string; dueAt: string } | null }) =>
      line.next && line.next.state !== 'paused' ? [line.next.dueAt] : [],
    );
    expect(running).toEqual([...running].sort());
    const overdue = (await engineer.get('/api/v1/complaints?clock=overdue&limit=200')).body;
    expect(overdue.items).toHaveLength(whole.counts.overdue);
    expect((await second.get('/api/v1/complaints?mine=true&limit=200')).body.items).toHaveLength(1);
  });
  test('keeps a foreign plant out', async () => {
    const complaint = await record({ title: 'Behind the wall', lots: ['WALL-1'] });
    expect((await stranger.get(url(complaint.id))).status).toBe(404);
    expect((await stranger.get(`/api/v1/complaints?plant=${plant.id}`)).status).toBe(404);
    expect((await stranger.get('/api/v1/complaints')).body.items).toEqual([]);
    expect((await stranger.put(url(complaint.id, '/closed'), { note: 'not mine' }, 1)).status).toBe(404);
    const similar = await stranger.get(
      `/api/v1/complaints/similar?plantId=${other.id}&lots=WALL-1&text=Behind the wall`,
    );
    expect(similar.body.items).toEqual([]);
  });
});

describe('similar cases', () => {
  test('are offered with the reason, a duplicate by the customer’s reference first', async () => {
    const housing = await make.makeHousing(it.db);
    const tool = await make.makeTool(it.db, plant.id);
    const past = await record({
      title: 'Contact pushed back at mating',
      housingId: housing.id,
      lots: ['R-501'],
      customerRef: 'Q-900',
      effect: 'open_circuit',
    });
    const [report] = await addReports(it.db, [
      { plantId: plant.id, foundOn: '2026-05-20', source: 'customer', reelLot: 'R-777', toolId: tool.id },
    ]);
    await engineer.post(url(past.id, '/reports'), { report });
    const ask = async (query: string) =>
      (await engineer.get(`/api/v1/complaints/similar?plantId=${plant.id}&${query}`)).body.items as {
        id: string;
        shares: string[];
        duplicate: boolean;
      }[];
    const [first] = await ask(
      `customerId=${customer.id}&customerRef=q-900&housingId=${housing.id}&effect=open_circuit`,
    );
    expect(first).toMatchObject({ id: past.id, duplicate: true, shares: ['reference', 'part', 'effect'] });
    expect((await ask(`lots=r-777`)).map(({ id }) => id)).toEqual([past.id, report]);
    expect((await ask(`tools=${tool.id}`)).find(({ id }) => id === past.id)).toMatchObject({
      shares: ['tool'],
      duplicate: false,
    });
    expect((await ask(`housingId=${housing.id}&text=contact pushed back`))[0]).toMatchObject({
      shares: ['part', 'words'],
    });
    expect(await ask(`lots=R-501&except=${past.id}`)).toEqual([]);
  });
});

describe('failure reports', () => {
  test('are linked, recorded from the intake, and unlinked without being lost', async () => {
    const housing = await make.makeHousing(it.db, { safetyRelevant: true });
    const complaint = await record({ housingId: housing.id, lots: ['R-9'], serials: ['S1', 'S9'], customerRef: 'Q-1' });
    expect(complaint.safety).toBe(true);
    const body = { source: 'customer', quantityFound: 3, foundOn: '2026-06-12' };
    const made = await engineer.post(url(complaint.id, '/new-report'), body);
    const [line] = made.body.reports;
    const report = (await engineer.get(`/api/v1/failures/${line.id}`)).body;
    expect(report).toMatchObject({
      source: 'customer',
      found: 'field',
      housingId: housing.id,
      reelLot: 'R-9',
      serialTo: 'S9',
      customerRef: 'Q-1',
      quantityFound: 3,
      safety: true,
    });
    await engineer.put(
      `/api/v1/failures/${line.id}/evidence`,
      { findings: [{ code: 'lance_flat', answer: 'yes' }], remove: [] },
      1,
    );
    expect((await engineer.get(url(complaint.id))).body.reports[0].findingsTaken).toBe(1);
    expect((await engineer.delete(url(complaint.id, `/reports/${line.id}`))).body.reports).toEqual([]);
    expect((await engineer.post(url(complaint.id, '/reports'), { report: line.number })).body.reports).toHaveLength(1);
    const [foreign] = await addReports(it.db, [{ plantId: other.id, foundOn: '2026-06-01' }]);
    expect((await engineer.post(url(complaint.id, '/reports'), { report: foreign })).status).toBe(422);
    const list = await engineer.get(`/api/v1/complaints?failure=${line.id}&state=all`);
    expect(list.body.items.map(({ id }: { id: string }) => id)).toEqual([complaint.id]);
  });
});

describe('a safety-relevant complaint', () => {
  test('is before the person responsible in the moment it is recorded', async () => {
    const before = await noticesOf(safety, 'complaint_safety');
    const { id, version } = await record({ safety: true });
    expect(await noticesOf(safety, 'complaint_safety')).toBe(before + 1);
    expect(await it.db.prisma.mail.count({ where: { subject: { contains: 'Safety-relevant' } } })).toBeGreaterThan(0);
    expect((await engineer.put(url(id, '/safety-seen'), { seen: true }, version)).status).toBe(403);
    const seen = await safety.put(url(id, '/safety-seen'), { seen: true }, version);
    expect(seen.body).toMatchObject({ safetySeenAt: monday.toISOString(), safetySeenBy: safety.name });
  });
  test('closes with a second person’s word only', async () => {
    const { id, version } = await record({ safety: true });
    expect((await engineer.put(url(id, '/closed'), { note: 'content' }, version)).status).toBe(409);
    await answerAll(id);
    const unseen = await engineer.put(url(id, '/closed'), { note: 'content' }, version);
    expect(unseen.body.detail).toMatch(/acknowledged/);
    await safety.put(url(id, '/safety-seen'), { seen: true }, version);
    const asked = await engineer.put(url(id, '/closed'), { note: 'the customer is content' }, version + 1);
    expect(asked.body).toMatchObject({ closedAt: null, blocks: ['consent_waiting'] });
    const consent = asked.body.consents[0];
    const answer = (by: Asker) => by.put(url(id, `/consents/${consent.id}`), { answer: 'given' }, asked.body.version);
    expect((await answer(engineer)).status).toBe(403);
    expect((await answer(second)).status).toBe(403);
    expect((await answer(stranger)).status).toBe(404);
    const closed = await answer(manager);
    expect(closed.body).toMatchObject({ closingNote: 'the customer is content', closedAt: monday.toISOString() });
    expect((await engineer.put(url(id, '/clocks/cause/owner'), { ownerId: second.id }, 2)).status).toBe(409);
    const open = await engineer.put(url(id, '/reopened'), { reason: 'one more part' }, closed.body.version);
    expect(open.body.closedAt).toBeNull();
  });
  test('loses its flag by a reason and another person’s word, not by editing', async () => {
    const { id, version } = await record({ safety: true });
    const edited = {
      plantId: plant.id,
      customerId: customer.id,
      title: 'Changed',
      receivedAt: monday.toISOString(),
      safety: false,
    };
    const after = await engineer.put(url(id), edited, version);
    expect(after.body.safety).toBe(true);
    const asked = await manager.put(
      url(id, '/unflag'),
      { reason: 'the circuit lights a reading lamp' },
      after.body.version,
    );
    const consent = asked.body.consents[0];
    const word = (by: Asker, answer: string) =>
      by.put(url(id, `/consents/${consent.id}`), { answer }, asked.body.version);
    expect((await word(manager, 'given')).status).toBe(403);
    expect((await word(safety, 'given')).body).toMatchObject({ safety: false, safetySeenAt: null });
    expect((await word(safety, 'refused')).status).toBe(409);
  });
});

test('an ordinary complaint closes when every clock is answered or stopped with a reason', async () => {
  const { id, version } = await record();
  for (const kind of ['first_reply', 'containment', 'cause'])
    await engineer.put(url(id, `/clocks/${kind}/answered`), { sent: 'our letter' }, 1);
  expect((await engineer.put(url(id, '/closed'), { note: 'no action needed' }, version)).status).toBe(409);
  await engineer.put(url(id, '/clocks/corrective_action/paused'), { reason: 'the customer withdrew it' }, 1);
  const closed = await engineer.put(url(id, '/closed'), { note: 'no action needed' }, version);
  expect(closed.body.closedBy).toBe(engineer.name);
  const trail = await it.db.prisma.auditEntry.findMany({ where: { entity: 'complaint', entityId: id } });
  expect(trail.map(({ action }) => action).sort()).toEqual([
    'clock answered',
    'clock answered',
    'clock answered',
    'clock paused',
    'closed',
    'recorded',
  ]);
});
