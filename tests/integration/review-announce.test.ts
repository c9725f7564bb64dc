/** Reviews are ready at their hour without anyone asking, once, and reach those who subscribed and may read them. */
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { prepareReviews } from '#api/features/review/announce.service.ts';
import { sendMail } from '#api/platform/mail/send.ts';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { type MailServer, startMailServer } from '#tests/support/mail-server.ts';
import * as make from '#tests/support/master-data.ts';

let it: TestApp;
let mail: MailServer;
const plants: Record<string, string> = {};
const people: Record<string, Asker> = {};
const emailOf = ({ id }: Asker) => `${id}@test.invalid`;

beforeAll(async () => {
  // Thursday 26 March 2026; on Sunday the 29th clocks in Lisbon go forward, in Shanghai never.
  it = await createTestApp({ now: '2026-03-26T10:00:00Z' });
  for (const [code, zone, locale] of [
    ['LIS', 'Europe/Lisbon', 'de'],
    ['SHA', 'Asia/Shanghai', 'en'],
  ] as const) {
    const { id } = await make.makePlant(it.db, { code, currency: 'EUR', zone, locale });
    await make.makeStages(it.db, id);
    plants[code] = id;
  }
  mail = await startMailServer();
  Object.assign(it.app.config, {
    mail: { server: mail.url, from: 'Escape Ledger <ledger@test.invalid>' },
    publicUrl: 'https://ledger.test.invalid',
  });
  people.lisbon = await it.as('viewer', [plants.LIS!]);
  people.chief = await it.as('manager', undefined, 'de');
  people.former = await it.as('viewer', [plants.LIS!]);
  const subscribe = (who: string, body: object) => people[who]!.put('/api/v1/reviews/subscriptions', body, 1);
  expect((await subscribe('lisbon', { plants: [plants.LIS], group: false })).status).toBe(200);
  expect((await subscribe('former', { plants: [plants.LIS], group: false })).status).toBe(200);
  expect((await subscribe('chief', { plants: [], group: true })).status).toBe(200);
  expect((await subscribe('lisbon', { plants: [plants.SHA], group: false })).status).toBe(404);
  expect((await subscribe('lisbon', { plants: [plants.LIS], group: true })).status).toBe(403);
  await it.db.prisma.roleGrant.deleteMany({ where: { personId: people.former.id } });
});
afterAll(async () => {
  await mail.stop();
  await it.close();
});
beforeEach(() => {
  mail.received.length = 0;
});

const kept = async () =>
  (await it.db.prisma.review.findMany({ orderBy: { openedAt: 'asc' } })).map(({ scope, weekFrom }) => [
    Object.keys(plants).find((code) => plants[code] === scope) ?? scope,
    weekFrom.toISOString().slice(0, 10),
  ]);
const run = (at: string) => prepareReviews(it.app, new Date(at));
const send = (at: string) => sendMail(it.app, new Date(at));

test('the first run takes up the newest week that is due, and no older one', async () => {
  await run('2026-03-26T10:00:00Z');
  expect((await kept()).sort()).toEqual([
    ['LIS', '2026-03-16'],
    ['SHA', '2026-03-16'],
    ['group', '2026-03-16'],
  ]);
  await send('2026-03-26T10:00:00Z');
  expect(mail.received.map(({ to }) => to[0]).sort()).toEqual([emailOf(people.lisbon!), emailOf(people.chief!)].sort());
});

test('each plant at its own six o’clock, across the change of the clocks', async () => {
  await it.db.prisma.mail.deleteMany();
  const fresh = async (at: string) => {
    const before = (await kept()).length;
    await run(at);
    return (await kept()).slice(before);
  };
  expect(await fresh('2026-03-29T21:59:00Z')).toEqual([]);
  expect(await fresh('2026-03-29T22:00:00Z')).toEqual([['SHA', '2026-03-23']]);
  // 06:00 in Lisbon is 05:00 UTC from this Sunday on.
  expect(await fresh('2026-03-30T04:59:00Z')).toEqual([]);
  expect(await fresh('2026-03-30T05:00:00Z')).toEqual([['LIS', '2026-03-23']]);
  expect(await fresh('2026-03-30T06:00:00Z')).toEqual([['group', '2026-03-23']]);
});

test('subscribers get it once, as a PDF, in the language of plant or reader; who lost the role gets nothing', async () => {
  await Promise.all([run('2026-03-30T06:05:00Z'), run('2026-03-30T06:05:00Z')]);
  await run('2026-03-30T06:10:00Z');
  await send('2026-03-30T06:10:00Z');
  const to = mail.received.map(({ to: [address] }) => address);
  expect(to.sort()).toEqual([emailOf(people.lisbon!), emailOf(people.chief!)].sort());
  const mine = mail.received.find(({ to: [address] }) => address === emailOf(people.lisbon!))!;
  expect(mine.subject).toContain('Weekly review');
  // The letter is in the reader's language, the sheet in the plant's.
  expect(mine.text).toContain('filename=besprechung-LIS-2026-W13.pdf');
  expect(mine.text.replaceAll(/=\r?\n/g, '')).toContain('you chose to be sent this review');
  const chief = mail.received.find(({ to: [address] }) => address === emailOf(people.chief!))!;
  expect(chief.subject).toContain('Wochenbesprechung');
  // “%PDF-” in base64 (RFC 4648).
  expect(mine.text).toContain('JVBERi0');
});

test('after an outage over Monday the same week is caught up with, once', async () => {
  await it.db.prisma.mail.deleteMany();
  const before = (await kept()).length;
  await run('2026-04-09T11:00:00Z');
  await run('2026-04-10T11:00:00Z');
  expect((await kept()).slice(before).sort()).toEqual([
    ['LIS', '2026-03-30'],
    ['SHA', '2026-03-30'],
    ['group', '2026-03-30'],
  ]);
  await send('2026-04-10T11:00:00Z');
  expect(mail.received).toHaveLength(2);
});

test('a review begun by hand is announced as well; who unsubscribed gets nothing any more', async () => {
  it.time.now = new Date('2026-04-13T05:00:00Z');
  const chief = await it.as('manager');
  const begun = await chief.post('/api/v1/reviews', { plant: [plants.LIS], start: '2026-04-06' });
  expect(begun.status).toBe(201);
  const viewer = await it.as('viewer', [plants.LIS!]);
  await viewer.put('/api/v1/reviews/subscriptions', { plants: [plants.LIS], group: false }, 1);
  await it.db.prisma.reviewSubscription.deleteMany({ where: { personId: people.lisbon!.id } });
  await it.db.prisma.mail.deleteMany();
  await run('2026-04-13T05:00:00Z');
  await send('2026-04-13T05:00:00Z');
  expect(mail.received.map(({ to }) => to[0])).toEqual([emailOf(viewer)]);
  const gone = await viewer.put('/api/v1/reviews/subscriptions', { plants: [], group: false }, 1);
  expect(gone.body).toEqual({ plants: [], group: false });
  mail.received.length = 0;
  await run('2026-04-20T05:00:00Z');
  await send('2026-04-20T05:00:00Z');
  expect(mail.received.map(({ to }) => to[0])).not.toContain(emailOf(viewer));
});
