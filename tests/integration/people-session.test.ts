import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { newId } from '#api/platform/ids.ts';
import { hashPassword } from '#api/platform/passwords.ts';
import { sessionCookie } from '#api/platform/session.ts';
import { createTestApp, type TestApp } from '#tests/support/app.ts';

const password = 'correct horse battery staple';
const hour = 3_600_000;
let t: TestApp;
let passwordHash: string;

beforeAll(async () => {
  t = await createTestApp();
  passwordHash = await hashPassword(password);
});
afterAll(() => t.close());

async function makePerson(fields: { retiredAt?: Date; mustChangePassword?: boolean } = {}): Promise<string> {
  const id = newId();
  const email = `${id}@test.invalid`;
  await t.db.prisma.person.create({
    data: { id, name: 'Robin Example', email, passwordHash, mustChangePassword: false, ...fields },
  });
  await t.db.prisma.roleGrant.create({ data: { id: newId(), personId: id, role: 'viewer', plantId: null } });
  return email;
}

const signIn = (body: object, headers: Record<string, string> = {}) =>
  t.app.inject({ method: 'POST', url: '/api/v1/session', payload: body, headers });
const who = (cookie: string, headers: Record<string, string> = {}) =>
  t.app.inject({ method: 'GET', url: '/api/v1/session', headers: { cookie, ...headers } });
const cookieOf = (response: { cookies: { name: string; value: string }[] }) =>
  `${sessionCookie}=${response.cookies.find(({ name }) => name === sessionCookie)?.value}`;

describe('signing in', () => {
  it('opens a session that only the browser itself can read', async () => {
    const email = await makePerson();
    const answer = await signIn({ email: email.toUpperCase(), password });
    expect(answer.statusCode).toBe(200);
    expect(answer.json()).toMatchObject({ email, permissions: { 'failures.read': 'all' } });
    expect(answer.json().permissions).not.toHaveProperty('failures.write');
    expect(answer.cookies[0]).toMatchObject({ httpOnly: true, sameSite: 'Lax', path: '/', maxAge: 7 * 24 * 3600 });
    expect(answer.cookies[0]).not.toHaveProperty('secure');
    expect((await who(cookieOf(answer))).json()).toMatchObject({ email });
  });

  it('keeps no secret that would open a session', async () => {
    const answer = await signIn({ email: await makePerson(), password });
    const secret = cookieOf(answer).split('=')[1] as string;
    expect(await t.db.prisma.session.count({ where: { secretHash: secret } })).toBe(0);
    expect(answer.body).not.toContain(secret);
    expect(answer.body).not.toMatch(/argon2|passwordHash/);
  });

  it('says the same whether the person or the password is wrong', async () => {
    const email = await makePerson();
    const retired = await makePerson({ retiredAt: new Date() });
    const answers = [
      await signIn({ email, password: 'wrong' }),
      await signIn({ email: `nobody-${email}`, password }),
      await signIn({ email: retired, password }),
    ];
    for (const answer of answers) {
      const { instance: _, ...problem } = answer.json();
      expect(answer.statusCode).toBe(401);
      expect(problem).toEqual({ ...answers[0]?.json(), instance: undefined });
      expect(answer.cookies).toEqual([]);
    }
  });

  it('checks a password for unknown people too, so that the time taken tells nothing', async () => {
    const { openSession } = await import('#api/features/people/session.service.ts');
    const passwords = await import('#api/platform/passwords.ts');
    const real = await hashPassword('x');
    expect(await passwords.passwordMatches('x', real)).toBe(true);
    await expect(openSession(t.db, { email: 'nobody@test.invalid', password }, t.time.now)).rejects.toThrow(
      /Check both/,
    );
    // The decoy has the cost of a real hash: method, memory and passes are those of every hash.
    expect(real.split('$').slice(0, 3)).toEqual(['argon2id', '19456', '2']);
  });

  it('stops after ten tries for one account, not for others', async () => {
    const email = await makePerson();
    for (let tries = 0; tries < 10; tries++) expect((await signIn({ email, password: 'wrong' })).statusCode).toBe(401);
    const stopped = await signIn({ email, password });
    expect(stopped.statusCode).toBe(429);
    expect(stopped.json()).toMatchObject({
      code: 'too_many_requests',
      detail: expect.stringMatching(/Wait \d+ minutes/),
    });
    expect((await signIn({ email: email.toUpperCase(), password })).statusCode).toBe(429);
    expect((await signIn({ email: await makePerson(), password })).statusCode).toBe(200);
  });

  it('stops one address that tries many accounts', async () => {
    const from = { remoteAddress: '192.0.2.7' };
    const tries = await Promise.all(
      Array.from({ length: 101 }, (_, index) =>
        t.app.inject({
          method: 'POST',
          url: '/api/v1/session',
          payload: { email: `guess${index}@test.invalid`, password: 'wrong' },
          ...from,
        }),
      ),
    );
    expect(tries.filter(({ statusCode }) => statusCode === 429)).toHaveLength(1);
  });

  it('refuses a page of another site, with and without a session', async () => {
    const email = await makePerson();
    for (const origin of ['https://elsewhere.invalid', 'null', 'http://localhost:1']) {
      const answer = await signIn({ email, password }, { origin });
      expect(answer.statusCode, origin).toBe(403);
      expect(answer.json().code).toBe('foreign_origin');
    }
    const own = await signIn({ email, password }, { origin: 'http://ledger.test', host: 'ledger.test' });
    expect(own.statusCode).toBe(200);
    const forged = await t.app.inject({
      method: 'DELETE',
      url: '/api/v1/session',
      headers: { cookie: cookieOf(own), origin: 'https://elsewhere.invalid' },
    });
    expect(forged.statusCode).toBe(403);
    expect((await who(cookieOf(own))).statusCode).toBe(200);
  });
});

describe('a session', () => {
  const start = new Date('2026-06-15T10:00:00Z');
  const at = (hours: number) => {
    t.time.now = new Date(start.getTime() + hours * hour);
  };

  it('ends twelve hours after it was last used', async () => {
    at(0);
    const cookie = cookieOf(await signIn({ email: await makePerson(), password }));
    at(11.9);
    expect((await who(cookie)).statusCode).toBe(200);
    at(23.8);
    expect((await who(cookie)).statusCode).toBe(200);
    at(35.9);
    expect((await who(cookie)).json()).toMatchObject({ status: 401, code: 'sign_in_required' });
    at(0);
  });

  it('ends a week after it was opened, however much it is used', async () => {
    at(0);
    const cookie = cookieOf(await signIn({ email: await makePerson(), password }));
    for (let hours = 10; hours < 168; hours += 10) {
      at(hours);
      expect((await who(cookie)).statusCode, `${hours} h`).toBe(200);
    }
    at(168.1);
    expect((await who(cookie)).statusCode).toBe(401);
    at(0);
  });

  it('ends on signing out, and the cookie is cleared', async () => {
    const cookie = cookieOf(await signIn({ email: await makePerson(), password }));
    const out = await t.app.inject({ method: 'DELETE', url: '/api/v1/session', headers: { cookie } });
    expect(out.statusCode).toBe(204);
    expect(out.cookies[0]?.value).toBe('');
    expect((await who(cookie)).statusCode).toBe(401);
  });

  it('of a first password opens nothing but the change of that password', async () => {
    const cookie = cookieOf(await signIn({ email: await makePerson({ mustChangePassword: true }), password }));
    const plants = () => t.app.inject({ method: 'GET', url: '/api/v1/plants', headers: { cookie } });
    expect((await plants()).json()).toMatchObject({ status: 403, code: 'password_change_required' });
    const changed = await t.app.inject({
      method: 'PUT',
      url: '/api/v1/session/password',
      headers: { cookie },
      payload: { current: password, next: 'another long password' },
    });
    expect(changed.statusCode).toBe(204);
    expect((await plants()).statusCode).toBe(200);
  });

  it('is marked secure behind TLS', async () => {
    const { buildApp } = await import('#api/app.ts');
    const app = await buildApp({
      config: { ...t.app.config, trustProxy: true },
      db: t.db,
      clock: () => t.time.now,
    });
    const answer = await app.inject({
      method: 'POST',
      url: '/api/v1/session',
      headers: { 'x-forwarded-proto': 'https', 'x-forwarded-host': 'ledger.test', origin: 'https://ledger.test' },
      payload: { email: await makePerson(), password },
    });
    expect(answer.cookies[0]).toMatchObject({ secure: true });
    await app.close();
  });
});

describe('the own account', () => {
  const change = (cookie: string, body: object) =>
    t.app.inject({ method: 'PUT', url: '/api/v1/session/password', headers: { cookie }, payload: body });

  it('changes its password, which ends the other sessions and leaves no trace of the password', async () => {
    const email = await makePerson();
    const here = cookieOf(await signIn({ email, password }));
    const elsewhere = cookieOf(await signIn({ email, password }));
    expect((await change(here, { current: 'wrong', next: 'another long password' })).json()).toMatchObject({
      status: 400,
      errors: [{ path: 'body/current' }],
    });
    expect((await change(here, { current: password, next: password })).statusCode).toBe(400);
    expect((await change(here, { current: password, next: 'short' })).statusCode).toBe(400);
    expect((await change(here, { current: password, next: 'another long password' })).statusCode).toBe(204);
    expect((await who(here)).statusCode).toBe(200);
    expect((await who(elsewhere)).statusCode).toBe(401);
    expect((await signIn({ email, password })).statusCode).toBe(401);
    expect((await signIn({ email, password: 'another long password' })).statusCode).toBe(200);
    const entries = await t.db.prisma.auditEntry.findMany({ where: { label: email } });
    expect(entries.map(({ action }) => action)).toEqual(['password changed']);
    expect(JSON.stringify(entries)).not.toMatch(/argon2|long password/);
  });

  it('cannot have its password guessed through a stolen session', async () => {
    const cookie = cookieOf(await signIn({ email: await makePerson(), password }));
    const guess = () => change(cookie, { current: 'wrong', next: 'another long password' });
    for (let tries = 0; tries < 10; tries++) expect((await guess()).statusCode).toBe(400);
    expect((await guess()).statusCode).toBe(429);
  });

  it('changes its name and language, audited', async () => {
    const email = await makePerson();
    const cookie = cookieOf(await signIn({ email, password }));
    const answer = await t.app.inject({
      method: 'PUT',
      url: '/api/v1/session/preferences',
      headers: { cookie },
      payload: { name: 'Kim Muster', locale: 'de' },
    });
    expect(answer.json()).toMatchObject({ name: 'Kim Muster', locale: 'de' });
    const [entry] = await t.db.prisma.auditEntry.findMany({ where: { label: email } });
    expect(entry).toMatchObject({ before: { name: 'Robin Example' }, after: { name: 'Kim Muster' } });
  });
});
