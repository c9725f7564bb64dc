/** Outgoing mail against a real SMTP server: nothing lost in an outage, nothing sent twice. */
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { systemActor } from '#api/platform/jobs/system-actor.ts';
import { queueMail } from '#api/platform/mail/queue.ts';
import { sendMail } from '#api/platform/mail/send.ts';
import { runUnit } from '#api/platform/unit.ts';
import { createTestApp, type TestApp } from '#tests/support/app.ts';
import { type MailServer, startMailServer } from '#tests/support/mail-server.ts';

let app: TestApp;
let server: MailServer;
beforeAll(async () => {
  app = await createTestApp();
});
afterAll(() => app.close());
beforeEach(async () => {
  await app.db.prisma.mail.deleteMany();
  server = await startMailServer();
  settle(server.url);
  return () => server.stop();
});

const start = new Date('2026-06-15T10:00:00Z');
const later = (minutes: number) => new Date(start.getTime() + minutes * 60_000);
const settle = (url: string) =>
  Object.assign(app.app.config, {
    mail: { server: url, from: 'Escape Ledger <ledger@test.invalid>' },
    publicUrl: 'https://ledger.test.invalid',
  });
const letter = (key: string, to = `${key}@test.invalid`) => ({
  key,
  to,
  subject: `Action ${key} ist fällig`,
  body: 'Größe geprüft',
  link: '/actions/1',
  locale: 'de',
});
const queue = (...keys: string[]) =>
  runUnit(app.db, { actor: systemActor, at: start }, (unit) =>
    queueMail(
      unit,
      keys.map((key) => letter(key)),
    ),
  );
const rows = () => app.db.prisma.mail.findMany({ orderBy: { id: 'asc' } });
const send = (at = start) => sendMail(app.app, at);

test('what is queued arrives once, with its link and its own identity, and the same is not queued again', async () => {
  await queue('a', 'b');
  await queue('a');
  expect(await send()).toEqual({ sent: 2 });
  expect(await send()).toEqual({ sent: 0 });
  expect(server.received.map(({ to }) => to[0]).sort()).toEqual(['a@test.invalid', 'b@test.invalid']);
  const [mail] = await rows();
  const a = server.received.find(({ to }) => to[0] === 'a@test.invalid')!;
  expect(a.messageId).toBe(`<${mail!.id}@escape-ledger>`);
  expect(a.text).toContain('https://ledger.test.invalid/actions/1');
  expect(a.text).toContain('Auto-Submitted: auto-generated');
  expect(mail).toMatchObject({ state: 'sent', tries: 1 });
});

test('a transaction that fails sends nothing', async () => {
  const failed = runUnit(app.db, { actor: systemActor, at: start }, async (unit) => {
    await queueMail(unit, [letter('never')]);
    throw new Error('undone');
  });
  await expect(failed).rejects.toThrow('undone');
  expect(await send()).toEqual({ sent: 0 });
  expect(await rows()).toEqual([]);
});

test('through an outage mail waits, is tried again at growing intervals, and arrives once', async () => {
  const { url } = server;
  await queue('a', 'b');
  await server.stop();
  expect(await send()).toEqual({ sent: 0 });
  expect(await send(later(1))).toEqual({ sent: 0 });
  expect((await rows()).every(({ state, lastError }) => state === 'waiting' && lastError !== null)).toBe(true);
  server = await startMailServer(Number(new URL(url).port));
  expect(await send(later(30))).toEqual({ sent: 2 });
  expect(server.received).toHaveLength(2);
  expect((await rows()).every(({ state, lastError }) => state === 'sent' && lastError === null)).toBe(true);
});

test('a refusal for now is tried again; a refusal for good is given up and does not hold up the others', async () => {
  await queue('gone', 'greylisted', 'fine');
  server.refuse = (to) =>
    to.startsWith('gone')
      ? { code: 550, message: 'no such mailbox' }
      : to.startsWith('grey')
        ? { code: 451, message: 'try again' }
        : null;
  expect(await send()).toEqual({ sent: 1 });
  server.refuse = () => null;
  expect(await send(later(5))).toEqual({ sent: 1 });
  const states = Object.fromEntries((await rows()).map(({ key, state, lastError }) => [key, [state, lastError]]));
  expect(states).toMatchObject({
    fine: ['sent', null],
    greylisted: ['sent', null],
    gone: ['given_up', /no such mailbox/],
  });
});

test('after a connection lost at the last moment the mail goes again under the same Message-ID', async () => {
  await queue('a');
  server.breakOff = true;
  expect(await send()).toEqual({ sent: 0 });
  expect(await send(later(2))).toEqual({ sent: 1 });
  expect(new Set(server.received.map(({ messageId }) => messageId)).size).toBe(1);
});

test('several servers share the work and send nothing twice', async () => {
  const keys = Array.from({ length: 40 }, (_, place) => `m${place}`);
  await queue(...keys);
  const sent = await Promise.all([send(), send(), send()]);
  expect(sent.reduce((sum, one) => sum + one.sent, 0)).toBe(40);
  expect(server.received.map(({ to }) => to[0]).sort()).toEqual(keys.map((key) => `${key}@test.invalid`).sort());
});

test('what did not get out for three days is given up, kept with its error, and may be tried again', async () => {
  await queue('a');
  await server.stop();
  await send();
  await send(later(3 * 24 * 60 + 1));
  expect((await rows())[0]).toMatchObject({ state: 'given_up' });
  const admin = await app.as('administrator');
  app.time.now = later(3 * 24 * 60 + 1);
  const { body } = await admin.get('/api/v1/mail');
  expect(body).toMatchObject({
    waiting: 0,
    givenUp: 1,
    mailSetUp: true,
    lastError: expect.stringContaining('ECONNREFUSED'),
  });
  expect((await admin.put('/api/v1/mail/retry', {}, 1)).body).toEqual({ retried: 1 });
  expect((await rows())[0]).toMatchObject({ state: 'waiting' });
  server = await startMailServer();
  settle(server.url);
  expect(await send(later(3 * 24 * 60 + 2))).toEqual({ sent: 1 });
});
