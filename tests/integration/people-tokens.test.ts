import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { makePlant } from '#tests/support/master-data.ts';

let t: TestApp;
let admin: Asker;
let plantId: string;

beforeAll(async () => {
  t = await createTestApp();
  admin = await t.as('administrator');
  plantId = (await makePlant(t.db)).id;
});
afterAll(() => t.close());

const make = (fields: object = {}) =>
  admin.post('/api/v1/tokens', { name: 'Tester at line 3', grants: [{ role: 'inspector', plantId }], ...fields });
const ask = (secret: string, url = '/api/v1/session', headers: Record<string, string> = {}) =>
  t.app.inject({ method: 'GET', url, headers: { authorization: `Bearer ${secret}`, ...headers } });

describe('API tokens', () => {
  it('show their secret once and keep only its hash', async () => {
    const { status, body } = await make();
    expect(status).toBe(201);
    expect(body.secret).toMatch(/^[\w-]{43}$/);
    expect((await ask(body.secret)).json()).toMatchObject({ name: 'Tester at line 3', grants: body.token.grants });
    const everything = [
      await t.db.prisma.apiToken.findMany(),
      await t.db.prisma.auditEntry.findMany(),
      await t.db.prisma.idempotencyKey.findMany(),
      (await admin.get('/api/v1/tokens')).body,
    ];
    expect(JSON.stringify(everything)).not.toContain(body.secret);
  });

  it('are never kept for a repeat, so the secret is not stored with an Idempotency-Key', async () => {
    const headers = { 'idempotency-key': 'token-key-0001' };
    const body = { name: 'Twice', grants: [{ role: 'viewer', plantId }] };
    const one = await admin.post('/api/v1/tokens', body, {
      headers: { ...headers, 'content-type': 'application/json' },
    });
    expect(one.status).toBe(201);
    expect(await t.db.prisma.idempotencyKey.count({ where: { key: 'token-key-0001' } })).toBe(0);
  });

  it('may do what their roles allow, at their plants', async () => {
    const { secret } = (await make()).body;
    const plants = await ask(secret, '/api/v1/plants');
    expect(plants.json().items.map(({ id }: { id: string }) => id)).toEqual([plantId]);
    expect((await ask(secret, '/api/v1/audit')).statusCode).toBe(403);
  });

  it('end at their expiry', async () => {
    const { secret } = (await make({ expiresAt: '2026-06-16T10:00:00Z' })).body;
    t.time.now = new Date('2026-06-16T09:59:59Z');
    expect((await ask(secret)).statusCode).toBe(200);
    t.time.now = new Date('2026-06-16T10:00:00Z');
    expect((await ask(secret)).json()).toMatchObject({ status: 401, code: 'token_invalid' });
    t.time.now = new Date('2026-06-15T10:00:00Z');
  });

  it('must expire in the future', async () => {
    const before = await t.db.prisma.apiToken.count();
    expect((await make({ expiresAt: '2026-06-15T10:00:00Z' })).body).toMatchObject({
      status: 422,
      errors: [{ path: 'body/expiresAt' }],
    });
    expect(await t.db.prisma.apiToken.count()).toBe(before);
  });

  it('end when revoked, and revoking twice changes nothing more', async () => {
    const { secret, token } = (await make()).body;
    expect((await admin.delete(`/api/v1/tokens/${token.id}`)).status).toBe(204);
    expect((await admin.delete(`/api/v1/tokens/${token.id}`)).status).toBe(204);
    expect((await ask(secret)).statusCode).toBe(401);
    const entries = await t.db.prisma.auditEntry.findMany({ where: { entityId: token.id }, orderBy: { id: 'asc' } });
    expect(entries.map(({ action }) => action)).toEqual(['created', 'revoked']);
    expect((await admin.delete('/api/v1/tokens/018f4c7e-6b1a-7000-8000-00000000dead')).status).toBe(404);
  });

  it('are refused when malformed, and a cookie beside them does not help', async () => {
    for (const authorization of ['Bearer nonsense-nonsense-nonsense', 'Bearer ', 'Basic YTpi', 'Bearer a b'])
      expect(
        (
          await t.app.inject({
            method: 'GET',
            url: '/api/v1/session',
            headers: { authorization, cookie: admin.cookie },
          })
        ).statusCode,
        authorization,
      ).toBe(401);
  });

  it('have no account: no password, no preferences, no further tokens', async () => {
    const { secret } = (await make({ grants: [{ role: 'administrator', plantId: null }] })).body;
    const headers = { authorization: `Bearer ${secret}` };
    const put = (url: string, payload: object) => t.app.inject({ method: 'PUT', url, headers, payload });
    expect((await put('/api/v1/session/preferences', { name: 'X', locale: 'en' })).statusCode).toBe(403);
    expect((await put('/api/v1/session/password', { current: 'x', next: 'a long password' })).statusCode).toBe(403);
    const more = await t.app.inject({
      method: 'POST',
      url: '/api/v1/tokens',
      headers,
      payload: { name: 'more', grants: [{ role: 'viewer', plantId: null }] },
    });
    expect(more.json()).toMatchObject({ status: 403, code: 'not_allowed' });
  });

  it('work from any site: they are not a cookie', async () => {
    const { secret } = (await make()).body;
    const answer = await t.app.inject({
      method: 'DELETE',
      url: '/api/v1/session',
      headers: { authorization: `Bearer ${secret}`, origin: 'https://tester.invalid' },
    });
    expect(answer.statusCode).toBe(204);
  });
});
