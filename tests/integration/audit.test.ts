import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AuditEntry } from '#contracts/audit.ts';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { makePlant } from '#tests/support/master-data.ts';

let t: TestApp;
let admin: Asker;
let own: string;
let foreign: string;

beforeAll(async () => {
  t = await createTestApp();
  admin = await t.as('administrator');
  own = (await makePlant(t.db)).id;
  foreign = (await makePlant(t.db)).id;
  const changes: [string, string, object][] = [
    ['2026-06-01T08:00:00Z', 'lines', { plantId: own, code: 'L1', name: 'Line 1' }],
    ['2026-06-02T08:00:00Z', 'lines', { plantId: foreign, code: 'L1', name: 'Line 1' }],
    ['2026-06-03T08:00:00Z', 'customers', { code: 'C1', name: 'Customer' }],
    ['2026-06-04T08:00:00Z', 'tools', { plantId: own, code: 'AP-1', name: 'Applicator', kind: 'applicator' }],
    ['2026-06-05T08:00:00Z', 'lines', { plantId: own, code: 'L2', name: 'Line 2' }],
  ];
  for (const [at, kind, body] of changes) {
    t.time.now = new Date(at);
    expect((await admin.post(`/api/v1/${kind}`, body)).status).toBe(201);
  }
});
afterAll(() => t.close());

const read = async (who: Asker, query = '') => (await who.get(`/api/v1/audit${query}`)).body.items as AuditEntry[];
const said = (entries: AuditEntry[]) => entries.map(({ entity, label }) => `${entity} ${label}`);

describe('the audit trail', () => {
  it('is read newest first by who answers for all plants', async () => {
    expect(said(await read(admin))).toEqual(['line L2', 'tool AP-1', 'customer C1', 'line L1', 'line L1']);
  });

  it('shows a manager the changes of the own plants, not those of the group', async () => {
    const manager = await t.as('manager', [own]);
    expect(said(await read(manager))).toEqual(['line L2', 'tool AP-1', 'line L1']);
    expect((await manager.get(`/api/v1/audit?plant=${foreign}`)).status).toBe(404);
    for (const role of ['viewer', 'inspector', 'engineer'] as const)
      expect((await (await t.as(role)).get('/api/v1/audit')).status, role).toBe(403);
  });

  it('is filtered by plant, kind, row, person and period', async () => {
    expect(said(await read(admin, `?plant=${foreign}`))).toEqual(['line L1']);
    expect(said(await read(admin, '?entity=tool,customer'))).toEqual(['tool AP-1', 'customer C1']);
    const [newest] = await read(admin, '?limit=1');
    expect(said(await read(admin, `?entityId=${newest?.entityId}`))).toEqual(['line L2']);
    expect(said(await read(admin, '?from=2026-06-02T08:00:00Z&to=2026-06-04T08:00:00Z'))).toEqual([
      'customer C1',
      'line L1',
    ]);
    expect(await read(admin, '?actor=ADMINISTRATOR')).toHaveLength(5);
    expect(await read(admin, '?actor=%25')).toEqual([]);
  });

  it('is read page by page, each entry once', async () => {
    const seen: string[] = [];
    let cursor: string | null = '';
    while (cursor !== null) {
      const { body } = await admin.get(`/api/v1/audit?limit=2${cursor && `&cursor=${cursor}`}`);
      seen.push(...body.items.map(({ id }: AuditEntry) => id));
      cursor = body.next;
    }
    expect(seen).toEqual((await read(admin)).map(({ id }) => id));
  });

  it('says who, when, what it was and what it became', async () => {
    const [newest] = await read(admin, '?limit=1');
    expect(newest).toMatchObject({
      actor: admin.name,
      at: '2026-06-05T08:00:00.000Z',
      action: 'created',
      plantId: own,
      before: null,
      after: { code: 'L2', name: 'Line 2' },
    });
    expect(newest).not.toHaveProperty('actorId');
  });

  it('cannot be changed, not even in the database', async () => {
    await expect(t.db.prisma.auditEntry.updateMany({ data: { actor: 'nobody' } })).rejects.toThrow(/never changed/);
    await expect(t.db.prisma.auditEntry.deleteMany()).rejects.toThrow(/never changed/);
    expect(await read(admin)).toHaveLength(5);
  });
});
