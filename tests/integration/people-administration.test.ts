import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { makePlant } from '#tests/support/master-data.ts';

let t: TestApp;
let admin: Asker;
let plantId: string;
let serial = 0;

beforeAll(async () => {
  t = await createTestApp();
  admin = await t.as('administrator');
  plantId = (await makePlant(t.db)).id;
});
afterAll(() => t.close());

const input = (grants: object[] = [{ role: 'inspector', plantId }]) => ({
  name: 'Alex Example',
  email: `alex${++serial}@test.invalid`,
  locale: 'de',
  grants,
});
const first = 'a first password';
const add = async (grants?: object[]) =>
  (await admin.post('/api/v1/people', { ...input(grants), password: first })).body;
const trail = (id: string) =>
  t.db.prisma.auditEntry.findMany({ where: { entity: 'person', entityId: id }, orderBy: { id: 'asc' } });

describe('people', () => {
  it('are added with a first password that is nowhere to be read', async () => {
    const body = { ...input(), password: first };
    const { status, body: person } = await admin.post('/api/v1/people', body);
    expect(status).toBe(201);
    expect(person).toMatchObject({ email: body.email, mustChangePassword: true, version: 1, grants: body.grants });
    const [entry] = await trail(person.id);
    expect(entry).toMatchObject({ action: 'created', actor: admin.name, label: body.email, before: null });
    expect(JSON.stringify([entry, person])).not.toContain(first);
  });

  it('have an e-mail address of their own', async () => {
    const one = await add();
    const again = await admin.post('/api/v1/people', { ...input(), email: one.email.toUpperCase(), password: first });
    expect(again.body).toMatchObject({ status: 409, code: 'already_exists' });
  });

  it('are changed by the version that was read', async () => {
    const person = await add();
    const url = `/api/v1/people/${person.id}`;
    const next = { ...input([{ role: 'engineer', plantId: null }]), name: 'Alex Changed' };
    const changed = await admin.put(url, next, 1);
    expect(changed.body).toMatchObject({ version: 2, name: 'Alex Changed', grants: next.grants });
    expect((await admin.put(url, next, 1)).body).toMatchObject({ status: 412, code: 'changed_meanwhile' });
    const [, entry] = await trail(person.id);
    expect(entry).toMatchObject({ before: { grants: person.grants }, after: { grants: next.grants } });
    expect(await trail(person.id)).toHaveLength(2);
  });

  it('cannot be given a role at a plant that does not exist', async () => {
    const grants = [{ role: 'viewer', plantId: '018f4c7e-6b1a-7000-8000-00000000dead' }];
    const before = await t.db.prisma.person.count();
    const { body } = await admin.post('/api/v1/people', { ...input(grants), password: first });
    expect(body).toMatchObject({ status: 422, code: 'unknown_reference' });
    expect(await t.db.prisma.person.count()).toBe(before);
  });

  it('lose their sessions when the password is reset or they are retired', async () => {
    for (const [path, body] of [
      ['password', { password: 'a second password' }],
      ['retired', { retired: true }],
    ] as const) {
      const other = await t.as('viewer');
      expect((await other.get('/api/v1/session')).status).toBe(200);
      expect((await admin.put(`/api/v1/people/${other.id}/${path}`, body, 1)).status).toBe(200);
      expect((await other.get('/api/v1/session')).status, path).toBe(401);
    }
  });

  it('lose a role at once, in the middle of a session', async () => {
    const other = await t.as('manager');
    expect((await other.get('/api/v1/audit')).status).toBe(200);
    const person = (await t.db.prisma.person.findUniqueOrThrow({ where: { id: other.id } })).email;
    await admin.put(`/api/v1/people/${other.id}`, { ...input([{ role: 'viewer', plantId }]), email: person }, 1);
    expect((await other.get('/api/v1/audit')).status).toBe(403);
  });

  it('can be brought back', async () => {
    const person = await add();
    await admin.put(`/api/v1/people/${person.id}/retired`, { retired: true }, 1);
    const list = async (query: string) => (await admin.get(`/api/v1/people?q=${person.email}${query}`)).body.items;
    expect(await list('')).toEqual([]);
    expect(await list('&retired=true')).toHaveLength(1);
    const back = await admin.put(`/api/v1/people/${person.id}/retired`, { retired: false }, 2);
    expect(back.body).toMatchObject({ retiredAt: null });
    expect((await trail(person.id)).map(({ action }) => action)).toEqual(['created', 'retired', 'brought back']);
  });

  it('are listed page by page, each once', async () => {
    await Promise.all(Array.from({ length: 7 }, () => add()));
    const seen: string[] = [];
    let cursor: string | null = '';
    while (cursor !== null) {
      const page = await admin.get(`/api/v1/people?limit=3${cursor && `&cursor=${cursor}`}`);
      seen.push(...page.body.items.map(({ email }: { email: string }) => email));
      cursor = page.body.next;
    }
    expect(seen).toEqual([...new Set(seen)].sort());
    expect(seen).toHaveLength(await t.db.prisma.person.count({ where: { retiredAt: null } }));
    expect((await admin.get('/api/v1/people?cursor=bm9uc2Vuc2U')).body).toMatchObject({ status: 400 });
  });
});

describe('administrators', () => {
  const retire = (who: Asker, id: string, version: number) =>
    who.put(`/api/v1/people/${id}/retired`, { retired: true }, version);
  const keep = { name: 'Test administrator', locale: 'en' };

  it('of one plant only do not administer people', async () => {
    const local = await t.as('administrator', [plantId]);
    expect((await local.get('/api/v1/people')).status).toBe(403);
    expect((await local.post('/api/v1/people', { ...input(), password: first })).status).toBe(403);
    expect((await local.get('/api/v1/tokens')).status).toBe(403);
  });

  it('do not lock themselves out', async () => {
    const self = await t.as('administrator');
    const { email } = await t.db.prisma.person.findUniqueOrThrow({ where: { id: self.id } });
    expect((await retire(self, self.id, 1)).body).toMatchObject({ status: 409, code: 'conflict' });
    const grants = [{ role: 'administrator', plantId }];
    const weaker = await self.put(`/api/v1/people/${self.id}`, { ...keep, email, grants }, 1);
    expect(weaker.body).toMatchObject({ status: 409, detail: expect.stringContaining('yourself') });
    expect((await self.get('/api/v1/people')).status).toBe(200);
  });

  it('leave one of them, even when two remove each other at the same moment', async () => {
    const { db } = t;
    const alone = await t.as('administrator');
    const partner = await t.as('administrator');
    const others = await db.prisma.person.findMany({ where: { id: { notIn: [alone.id, partner.id] } } });
    await db.prisma.person.updateMany({
      where: { id: { in: others.map(({ id }) => id) } },
      data: { retiredAt: new Date() },
    });
    const answers = await Promise.all([retire(alone, partner.id, 1), retire(partner, alone.id, 1)]);
    const [done, refused] = answers.map(({ status }) => status).sort();
    expect(done).toBe(200);
    // 401: the loser was retired, and so signed out, before the service knew who asks
    expect([401, 409]).toContain(refused);
    const left = await db.prisma.person.count({ where: { retiredAt: null } });
    expect(left).toBe(1);
  });
});
