import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { usualReplyTimes } from '#contracts/reply-times.ts';
import { stages } from '#contracts/taxonomy.ts';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { makeLine, makePlant } from '#tests/support/master-data.ts';

let t: TestApp;
let admin: Asker;
let manager: Asker;
let own: string;
let foreign: string;
let serial = 0;
const code = () => `X-${++serial}`;

beforeAll(async () => {
  t = await createTestApp();
  own = (await makePlant(t.db)).id;
  foreign = (await makePlant(t.db)).id;
  admin = await t.as('administrator');
  manager = await t.as('manager', [own]);
});
afterAll(() => t.close());

/** A valid row of each kind, and a change to it. */
const examples: Record<string, [row: () => Record<string, unknown>, change: Record<string, unknown>]> = {
  plants: [
    () => ({
      code: code(),
      name: 'Plant',
      zone: 'Asia/Tokyo',
      currency: 'JPY',
      weekStart: 7,
      locale: 'de',
      paper: 'Letter',
    }),
    { zone: 'Asia/Seoul' },
  ],
  lines: [() => ({ plantId: own, code: code(), name: 'Line' }), { name: 'Line 2' }],
  stages: [
    () => ({ plantId: own, code: code(), name: 'Pull test', common: 'lock_check', position: 6 }),
    { position: 7 },
  ],
  housings: [
    () => ({
      code: code(),
      name: 'Housing',
      rows: 2,
      columns: 3,
      missingCavities: ['A2'],
      retentionStyle: 'housing_latch',
      secondaryLock: 'two_piece',
      safetyRelevant: true,
    }),
    { missingCavities: [] },
  ],
  terminals: [
    () => ({
      code: code(),
      name: 'Terminal',
      wireMinMm2: 0.1288,
      wireMaxMm2: 0.5176,
      minRetentionN: 44.5,
      approvedToolTypes: ['AP-1', 'AP-2'],
    }),
    { approvedToolTypes: ['AP-2'], minRetentionN: null },
  ],
  wires: [() => ({ code: code(), name: 'Wire', sectionMm2: 0.3255, insulationMm: 1.35 }), { insulationMm: null }],
  tools: [
    () => ({
      plantId: own,
      code: code(),
      name: 'Applicator',
      kind: 'applicator',
      type: 'AP-1',
      cycleCount: 2_000_000_000,
      serviceInterval: 500_000,
      servicedAtCount: 1_900_000_000,
      servicedOn: '2026-05-04',
    }),
    { servicedAtCount: 2_000_000_000, servicedOn: '2026-06-15' },
  ],
  customers: [
    () => ({ code: code(), name: 'Customer', locale: 'en', paper: 'Letter', replyTimes: usualReplyTimes }),
    { name: 'Customer 2' },
  ],
  'cost-rates': [
    () => ({
      plantId: own,
      kind: 'labour',
      validFrom: `2026-01-${String(++serial % 28 || 1).padStart(2, '0')}`,
      hourlyMinor: 4_250,
    }),
    { hourlyMinor: 4_500 },
  ],
  'standard-costs': [
    () => ({
      plantId: own,
      stage: 'field',
      disposition: 'replaced',
      validFrom: `2026-01-${String(++serial % 28 || 1).padStart(2, '0')}`,
      terminalMinor: 90_000,
    }),
    { terminalMinor: 95_000 },
  ],
  'exchange-rates': [
    () => ({
      base: 'EUR',
      quote: 'JPY',
      validFrom: `2026-01-${String(++serial % 28 || 1).padStart(2, '0')}`,
      rate: '163.42',
    }),
    { rate: '0.0000000001' },
  ],
};
const kinds = Object.keys(examples);
const trail = (id: string) => t.db.prisma.auditEntry.findMany({ where: { entityId: id }, orderBy: { id: 'asc' } });

describe.each(kinds)('%s', (name) => {
  const [row, change] = examples[name]!;
  const url = `/api/v1/${name}`;

  it('are added, read, changed, retired and brought back, each with its trail', async () => {
    const input = row();
    const { status, body: added } = await admin.post(url, input);
    expect(status).toBe(201);
    expect(added).toEqual({ ...input, id: added.id, version: 1, retiredAt: null });
    expect((await admin.get(`${url}/${added.id}`)).body).toEqual(added);

    const changed = await admin.put(`${url}/${added.id}`, { ...input, ...change }, 1);
    expect(changed.body).toEqual({ ...added, ...change, version: 2 });
    const retired = await admin.put(`${url}/${added.id}/retired`, { retired: true }, 2);
    expect(retired.body).toEqual({ ...changed.body, version: 3, retiredAt: t.time.now.toISOString() });
    expect((await admin.get(`${url}/${added.id}`)).body).toEqual(retired.body);
    const back = await admin.put(`${url}/${added.id}/retired`, { retired: false }, 3);
    expect(back.body).toEqual({ ...changed.body, version: 4 });

    const entries = await trail(added.id);
    expect(entries.map(({ action }) => action)).toEqual(['created', 'updated', 'retired', 'brought back']);
    expect(entries[1]).toMatchObject({ actor: admin.name, before: added, after: changed.body });
  });

  it('are not changed by who read an older version, nor without one', async () => {
    const { body: added } = await admin.post(url, row());
    const { id, version: _, retiredAt: __, ...input } = added;
    await admin.put(`${url}/${id}`, { ...input, ...change }, 1);
    const late = await admin.put(`${url}/${id}`, input, 1);
    expect(late.body).toMatchObject({ status: 412, code: 'changed_meanwhile' });
    expect((await admin.put(`${url}/${id}/retired`, { retired: true }, 1)).status).toBe(412);
    const blind = await t.app.inject({
      method: 'PUT',
      url: `${url}/${id}`,
      payload: input,
      headers: { cookie: admin.cookie },
    });
    expect(blind.json()).toMatchObject({ status: 428, code: 'version_required' });
    expect(await trail(id)).toHaveLength(2);
  });

  it('leave no trail when nothing changes', async () => {
    const { body: added } = await admin.post(url, row());
    const { id, version: _, retiredAt: __, ...input } = added;
    expect((await admin.put(`${url}/${id}`, input, 1)).body).toEqual(added);
    expect((await admin.put(`${url}/${id}/retired`, { retired: false }, 1)).body).toEqual(added);
    expect(await trail(id)).toHaveLength(1);
  });

  it('cannot be deleted', async () => {
    const { body: added } = await admin.post(url, row());
    expect((await admin.delete(`${url}/${added.id}`)).body).toMatchObject({ status: 404, code: 'not_found' });
  });

  it('are listed page by page, each once, retired ones only when asked for', async () => {
    const { body: gone } = await admin.post(url, row());
    await admin.put(`${url}/${gone.id}/retired`, { retired: true }, 1);
    for (let more = 0; more < 4; more++) await admin.post(url, row());
    for (const retired of [false, true]) {
      const seen: string[] = [];
      let cursor: string | null = '';
      while (cursor !== null) {
        const { body } = await admin.get(`${url}?limit=2&retired=${retired}${cursor && `&cursor=${cursor}`}`);
        seen.push(...body.items.map(({ id }: { id: string }) => id));
        cursor = body.next;
      }
      const whole = (await admin.get(`${url}?limit=200&retired=${retired}`)).body.items;
      expect(seen).toEqual(whole.map(({ id }: { id: string }) => id));
      expect(new Set(seen).size).toBe(seen.length);
      expect(seen.includes(gone.id)).toBe(retired);
    }
  });

  it.each(['bm9uc2Vuc2U', Buffer.from('["a"]').toString('base64url'), Buffer.from('[1,2,3,4]').toString('base64url')])(
    'refuse the cursor %s',
    async (cursor) => {
      expect((await admin.get(`${url}?cursor=${cursor}`)).body).toMatchObject({ status: 400, code: 'invalid_request' });
    },
  );
});

describe('plants of others', () => {
  it('are not seen, not read and not changed', async () => {
    const line = await makeLine(t.db, foreign);
    const listed = (await manager.get('/api/v1/lines')).body.items;
    expect(listed.every(({ plantId }: { plantId: string }) => plantId === own)).toBe(true);
    expect(listed.length).toBeGreaterThan(0);
    expect((await manager.get(`/api/v1/lines?plant=${foreign}`)).status).toBe(404);
    expect((await manager.get(`/api/v1/lines/${line.id}`)).status).toBe(404);
    const body = { plantId: foreign, code: code(), name: 'Line' };
    expect((await manager.post('/api/v1/lines', body)).status).toBe(404);
    expect((await manager.put(`/api/v1/lines/${line.id}`, { ...body, plantId: own }, 1)).status).toBe(404);
    expect((await manager.put(`/api/v1/lines/${line.id}/retired`, { retired: true }, 1)).status).toBe(404);
    expect((await manager.get('/api/v1/plants')).body.items.map(({ id }: { id: string }) => id)).toEqual([own]);
  });

  it('take the role at that plant, not at another', async () => {
    const mixed = await t.as('manager', [own]);
    await t.db.prisma.roleGrant.create({
      data: { id: crypto.randomUUID(), personId: mixed.id, role: 'viewer', plantId: foreign },
    });
    const { body } = await mixed.post('/api/v1/lines', { plantId: foreign, code: code(), name: 'Line' });
    expect(body).toMatchObject({ status: 403, code: 'not_allowed' });
  });

  it('keep their rows: a row does not move', async () => {
    const { body: line } = await admin.post('/api/v1/lines', { plantId: own, code: code(), name: 'Line' });
    const moved = await admin.put(`/api/v1/lines/${line.id}`, { plantId: foreign, code: line.code, name: 'Line' }, 1);
    expect(moved.body).toMatchObject({ status: 422, errors: [{ path: 'body/plantId' }] });
  });

  it('get nothing new once retired, and unknown ones neither', async () => {
    const retired = await makePlant(t.db, { retiredAt: new Date() });
    for (const plantId of [retired.id, crypto.randomUUID()])
      expect((await admin.post('/api/v1/lines', { plantId, code: code(), name: 'Line' })).body).toMatchObject({
        status: 422,
        code: 'unknown_reference',
      });
  });

  it('leave what belongs to the group to those with the role for all plants', async () => {
    const local = await t.as('administrator', [own]);
    const housing = (await admin.post('/api/v1/housings', examples.housings![0]())).body;
    expect((await local.get(`/api/v1/housings/${housing.id}`)).status).toBe(200);
    expect((await local.post('/api/v1/housings', examples.housings![0]())).status).toBe(403);
    expect((await local.put(`/api/v1/housings/${housing.id}/retired`, { retired: true }, 1)).status).toBe(403);
    expect((await local.post('/api/v1/plants', examples.plants![0]())).status).toBe(403);
    expect((await local.put('/api/v1/organisation', { name: 'Mine', currency: 'EUR' }, 1)).status).toBe(403);
  });
});

describe('a plant', () => {
  it('begins with the ten common stages, in its language', async () => {
    const { body: plant } = await admin.post('/api/v1/plants', examples.plants![0]());
    const { items } = (await admin.get(`/api/v1/stages?plant=${plant.id}`)).body;
    expect(items.map(({ common }: { common: string }) => common)).toEqual(stages);
    expect(items.map(({ position }: { position: number }) => position)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect(items[0].name).toBe('Wareneingang');
    expect(await trail(items[0].id)).toHaveLength(1);
  });

  it('keeps its currency once there is money', async () => {
    const input = examples.plants![0]();
    const { body: plant } = await admin.post('/api/v1/plants', input);
    const change = (version: number, currency: string) =>
      admin.put(`/api/v1/plants/${plant.id}`, { ...input, currency }, version);
    expect((await change(1, 'EUR')).body).toMatchObject({ currency: 'EUR', version: 2 });
    const rate = { plantId: plant.id, kind: 'labour', validFrom: '2026-01-01', hourlyMinor: 1 };
    await admin.post('/api/v1/cost-rates', rate);
    expect((await change(2, 'JPY')).body).toMatchObject({ status: 409, errors: [{ path: 'body/currency' }] });
    expect((await admin.put(`/api/v1/plants/${plant.id}`, { ...input, currency: 'EUR', name: 'N' }, 2)).status).toBe(
      200,
    );
  });

  it('has a code of its own, retired ones included', async () => {
    const input = examples.plants![0]();
    const { body: plant } = await admin.post('/api/v1/plants', input);
    await admin.put(`/api/v1/plants/${plant.id}/retired`, { retired: true }, 1);
    const before = await t.db.prisma.auditEntry.count();
    expect((await admin.post('/api/v1/plants', input)).body).toMatchObject({ status: 409, code: 'already_exists' });
    expect(await t.db.prisma.auditEntry.count()).toBe(before);
  });
});

describe('searching', () => {
  it('finds part of a code or name whatever its case, and takes wildcards as they are', async () => {
    await admin.post('/api/v1/customers', { code: 'ZZ/100', name: 'Größe & Söhne', locale: 'en' });
    await admin.post('/api/v1/customers', { code: 'ZZ-1000', name: 'Other', locale: 'en' });
    const found = async (q: string) =>
      (await admin.get(`/api/v1/customers?q=${encodeURIComponent(q)}`)).body.items.map(
        (row: { code: string }) => row.code,
      );
    expect(await found('größe')).toEqual(['ZZ/100']);
    expect((await found('zz')).sort()).toEqual(['ZZ-1000', 'ZZ/100']);
    for (const wildcard of ['%', '_', '\\', "'"]) expect(await found(wildcard)).toEqual([]);
  });
});

describe('repeating a create with its Idempotency-Key', () => {
  it('gives the first answer and adds nothing', async () => {
    const input = { plantId: own, code: code(), name: 'Line' };
    const headers = { 'idempotency-key': 'line-key-0001', 'content-type': 'application/json' };
    const one = await admin.post('/api/v1/lines', input, { headers });
    const two = await admin.post('/api/v1/lines', input, { headers });
    expect(two).toMatchObject({ status: 201, body: one.body });
    expect((await admin.post('/api/v1/lines', { ...input, name: 'Other' }, { headers })).body).toMatchObject({
      status: 422,
      code: 'key_reused',
    });
  });
});

describe('values that cannot be', () => {
  const bad: [kind: string, change: object, path: string][] = [
    ['plants', { currency: 'DEM' }, 'body/currency'],
    ['plants', { currency: 'eur' }, 'body/currency'],
    ['plants', { zone: 'Mars/Olympus' }, 'body/zone'],
    ['plants', { weekStart: 0 }, 'body/weekStart'],
    ['plants', { code: '=1+1' }, 'body/code'],
    ['stages', { common: 'painting' }, 'body/common'],
    ['housings', { missingCavities: ['C1'] }, 'body/missingCavities'],
    ['housings', { rows: 1, columns: 1, missingCavities: ['A1'] }, 'body/missingCavities'],
    ['housings', { rows: 41 }, 'body/rows'],
    ['terminals', { wireMinMm2: 2 }, 'body/wireMaxMm2'],
    ['terminals', { wireMinMm2: 0.12345 }, 'body/wireMinMm2'],
    ['wires', { sectionMm2: 0 }, 'body/sectionMm2'],
    ['wires', { insulationMm: 1e308 }, 'body/insulationMm'],
    ['tools', { servicedAtCount: 2_000_000_001 }, 'body/servicedAtCount'],
    ['tools', { servicedOn: '20260-01-01' }, 'body/servicedOn'],
    ['tools', { cycleCount: 1.5 }, 'body/cycleCount'],
    ['cost-rates', { validFrom: '1999-12-31' }, 'body/validFrom'],
    ['standard-costs', { terminalMinor: -1 }, 'body/terminalMinor'],
    ['exchange-rates', { quote: 'EUR' }, 'body/quote'],
    ['exchange-rates', { rate: '0.0' }, 'body/rate'],
    ['exchange-rates', { rate: '1e3' }, 'body/rate'],
  ];
  it.each(bad)('%s refuse %o', async (name, change, path) => {
    const { body } = await admin.post(`/api/v1/${name}`, { ...examples[name]![0](), ...change });
    expect(body).toMatchObject({ status: 400, code: 'invalid_request' });
    expect(body.errors.map((error: { path: string }) => error.path)).toContain(path);
  });
});

describe('the group', () => {
  it('has a name and a currency, changed by version', async () => {
    const viewer = await t.as('viewer', [own]);
    const before = (await viewer.get('/api/v1/organisation')).body;
    expect(before).toEqual({ name: 'Our group', currency: 'EUR', version: 1, demo: false });
    const changed = await admin.put('/api/v1/organisation', { name: 'Invented group', currency: 'CHF' }, 1);
    expect(changed.body).toMatchObject({ name: 'Invented group', currency: 'CHF', version: 2 });
    expect((await admin.put('/api/v1/organisation', { name: 'Late', currency: 'EUR' }, 1)).status).toBe(412);
    expect((await viewer.put('/api/v1/organisation', { name: 'X', currency: 'EUR' }, 2)).status).toBe(403);
  });
});
