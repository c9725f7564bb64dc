import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { newId } from '#api/platform/ids.ts';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import * as make from '#tests/support/master-data.ts';
import { reportBody } from '#tests/support/reports.ts';

let it: TestApp;
let plant: Awaited<ReturnType<typeof make.makePlant>>;
let foreign: typeof plant;
let inspector: Asker;
let engineer: Asker;
let manager: Asker;

beforeAll(async () => {
  it = await createTestApp({ now: '2026-06-15T10:00:00Z' });
  plant = await make.makePlant(it.db, { code: 'LIS' });
  foreign = await make.makePlant(it.db, { code: 'OSA', zone: 'Asia/Tokyo', currency: 'JPY' });
  await make.makeStages(it.db, plant.id);
  inspector = await it.as('inspector', [plant.id]);
  engineer = await it.as('engineer', [plant.id]);
  manager = await it.as('manager', [plant.id]);
});
afterAll(() => it.close());

const post = (fields = {}, by = inspector) => by.post('/api/v1/failures', reportBody(plant.id, fields));
const auditOf = (entityId: string) => it.db.prisma.auditEntry.findMany({ where: { entityId }, orderBy: { id: 'asc' } });

describe('recording', () => {
  test('a full report comes back as it was sent, numbered per plant and year', async () => {
    const line = await make.makeLine(it.db, plant.id);
    const housing = await make.makeHousing(it.db);
    const tools = [await make.makeTool(it.db, plant.id), await make.makeTool(it.db, plant.id)];
    const sent = reportBody(plant.id, {
      foundOn: '2025-12-31',
      foundAt: '2025-12-31T23:30:00Z',
      lineId: line.id,
      station: 'Test bench 3',
      housingId: housing.id,
      toolIds: tools.map(({ id }) => id),
      cavities: ['A1', 'B3'],
      reelLot: 'R-7781',
      quantityFound: 2,
      quantityInspected: 40,
      note: 'Klemme nicht eingerastet – 端子抜け',
    });
    const { status, body } = await inspector.post('/api/v1/failures', sent);
    expect(status).toBe(201);
    expect(body).toMatchObject({ ...sent, foundAt: '2025-12-31T23:30:00.000Z', number: 'LIS-25-00001', version: 1 });
    expect((await inspector.get(`/api/v1/failures/${body.id}`)).body).toEqual(body);
    expect((await post({ foundOn: '2026-01-01' })).body.number).toBe('LIS-26-00001');
    const [entry] = await auditOf(body.id);
    expect(entry).toMatchObject({ action: 'recorded', actor: 'Test inspector', label: 'LIS-25-00001', before: null });
  });

  test('the plant’s own stage sets the common one, a safety-relevant housing the flag', async () => {
    const stage = await it.db.prisma.stage.findFirstOrThrow({ where: { plantId: plant.id, common: 4 } });
    const housing = await make.makeHousing(it.db, { safetyRelevant: true });
    const { body } = await post({ stageId: stage.id, found: 'field', housingId: housing.id });
    expect(body).toMatchObject({ found: 'insertion', safety: true });
  });

  test('the same id again gives the first report and adds nothing', async () => {
    const id = newId();
    const first = await post({ id, note: 'first' });
    const second = await post({ id, note: 'second' });
    expect([first.status, second.status]).toEqual([201, 201]);
    expect(second.body).toEqual(first.body);
    expect(await it.db.prisma.failure.count({ where: { id } })).toBe(1);
    expect(await auditOf(id)).toHaveLength(1);
  });

  test('an id that another plant uses is refused and shows nothing of it', async () => {
    const id = newId();
    const there = await it.as('inspector', [foreign.id]);
    expect((await there.post('/api/v1/failures', reportBody(foreign.id, { id }))).status).toBe(201);
    const { status, body } = await post({ id });
    expect([status, body.code]).toEqual([409, 'already_exists']);
    expect(JSON.stringify(body)).not.toContain('OSA');
  });

  test('one Idempotency-Key, sent ten times at once, records one report', async () => {
    const headers = { 'idempotency-key': `key-${newId()}` };
    const body = reportBody(plant.id, { note: 'ten at once' });
    const answers = await Promise.all(
      Array.from({ length: 10 }, () => inspector.post('/api/v1/failures', body, { headers })),
    );
    expect(new Set(answers.map((answer) => answer.status))).toEqual(new Set([201]));
    expect(new Set(answers.map((answer) => answer.body.id)).size).toBe(1);
    expect(await it.db.prisma.failure.count({ where: { note: 'ten at once' } })).toBe(1);
    const other = await inspector.post('/api/v1/failures', { ...body, note: 'else' }, { headers });
    expect([other.status, other.body.code]).toEqual([422, 'key_reused']);
  });

  test('one id, sent ten times at once without a key, records one report', async () => {
    const id = newId();
    const answers = await Promise.all(Array.from({ length: 10 }, () => post({ id })));
    expect(new Set(answers.map((answer) => `${answer.status} ${answer.body.number}`)).size).toBe(1);
  });

  test('numbers run without a gap when many write at once and some are refused', async () => {
    const answers = await Promise.all(
      Array.from({ length: 24 }, (_, index) =>
        post({ foundOn: '2024-05-05', ...(index % 3 === 0 && { lineId: newId() }) }),
      ),
    );
    const numbers = answers.filter(({ status }) => status === 201).map(({ body }) => body.number);
    const wanted = Array.from({ length: 16 }, (_, index) => `LIS-24-${String(index + 1).padStart(5, '0')}`);
    expect(numbers.sort()).toEqual(wanted);
  });

  test.each([
    ['lineId', 'line'],
    ['stageId', 'stage'],
    ['housingId', 'housing'],
    ['terminalId', 'terminal'],
    ['wireId', 'wire'],
    ['customerId', 'customer'],
  ])('an unknown %s is named', async (field, what) => {
    const { status, body } = await post({ [field]: newId() });
    expect([status, body.code, body.errors]).toEqual([
      422,
      'unknown_reference',
      [{ path: `body/${field}`, message: `no such ${what}` }],
    ]);
  });

  test('a line or tool of another plant, and a retired one, are unknown too', async () => {
    const line = await make.makeLine(it.db, foreign.id);
    const tool = await make.makeTool(it.db, foreign.id);
    const retired = await make.makeWire(it.db, { retiredAt: new Date() });
    for (const fields of [{ lineId: line.id }, { toolIds: [tool.id] }, { wireId: retired.id }])
      expect((await post(fields)).body.code).toBe('unknown_reference');
  });

  test('what does not fit together is refused with the field', async () => {
    const cases: [object, string][] = [
      [{ quantityFound: 5, quantityInspected: 4 }, 'quantityInspected'],
      [{ builtOn: '2026-06-11' }, 'builtOn'],
      [{ foundOn: '2026-06-16' }, 'foundOn'],
      [{ foundOn: '20260-06-16' }, 'foundOn'],
      [{ foundAt: '2026-06-09T12:00:00Z' }, 'foundAt'],
      [{ quantityFound: 0 }, 'quantityFound'],
      [{ quantityFound: 1e20 }, 'quantityFound'],
    ];
    for (const [fields, field] of cases) {
      const { status, body } = await post(fields);
      expect([400, 422]).toContain(status);
      expect(body.errors[0].path).toBe(`body/${field}`);
    }
  });

  test('the day is the plant’s: in Tokyo it is already tomorrow', async () => {
    it.time.now = new Date('2026-06-15T16:00:00Z');
    const there = await it.as('inspector', [foreign.id]);
    expect((await there.post('/api/v1/failures', reportBody(foreign.id, { foundOn: '2026-06-16' }))).status).toBe(201);
    expect((await post({ foundOn: '2026-06-16' })).status).toBe(422);
    it.time.now = new Date('2026-06-15T10:00:00Z');
  });

  test('a viewer, and an inspector of elsewhere, record nothing', async () => {
    const viewer = await it.as('viewer', [plant.id]);
    expect((await post({}, viewer)).status).toBe(403);
    const there = await it.as('inspector', [foreign.id]);
    expect((await post({}, there)).status).toBe(404);
  });
});

describe('correcting and voiding', () => {
  test('of two writers who read the same version one wins, and the other is told', async () => {
    const { body: report } = await post();
    const answers = await Promise.all(
      ['first', 'second'].map((note) =>
        inspector.put(`/api/v1/failures/${report.id}`, reportBody(plant.id, { note }), report.version),
      ),
    );
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 412]);
    const winner = answers.find(({ status }) => status === 200)!;
    const { body: now } = await inspector.get(`/api/v1/failures/${report.id}`);
    expect(now).toEqual(winner.body);
    expect(now.version).toBe(2);
    expect((await auditOf(report.id)).map(({ action }) => action)).toEqual(['recorded', 'corrected']);
  });

  test('without If-Match nothing changes', async () => {
    const { body: report } = await post();
    const { status } = await inspector.put(`/api/v1/failures/${report.id}`, reportBody(plant.id), 1, {
      headers: { 'if-match': '' },
    });
    expect(status).toBe(428);
  });

  test('a part that was retired since may stay, another retired one may not come', async () => {
    const wire = await make.makeWire(it.db);
    const other = await make.makeWire(it.db, { retiredAt: new Date() });
    const { body: report } = await post({ wireId: wire.id });
    await it.db.prisma.wire.update({ where: { id: wire.id }, data: { retiredAt: new Date() } });
    const url = `/api/v1/failures/${report.id}`;
    expect((await inspector.put(url, reportBody(plant.id, { wireId: wire.id, note: 'kept' }), 1)).status).toBe(200);
    expect((await inspector.put(url, reportBody(plant.id, { wireId: other.id }), 2)).status).toBe(422);
  });

  test('a report stays with its plant', async () => {
    const { body: report } = await post();
    const { status, body } = await inspector.put(`/api/v1/failures/${report.id}`, reportBody(foreign.id), 1);
    expect([status, body.errors[0].path]).toEqual([422, 'body/plantId']);
  });

  test('a void report leaves every count, stays readable, and is never changed again', async () => {
    const { body: report } = await post({ station: 'void-me' });
    const url = `/api/v1/failures/${report.id}`;
    const count = async () => (await manager.get('/api/v1/failures/count?station=void-me')).body;
    expect(await count()).toEqual({ reports: 1, terminals: 1 });
    expect((await inspector.put(`${url}/void`, { reason: 'typed twice' }, 1)).status).toBe(403);
    const { body } = await manager.put(`${url}/void`, { reason: 'typed twice' }, 1);
    expect(body).toMatchObject({ voidReason: 'typed twice', voidedAt: '2026-06-15T10:00:00.000Z' });
    expect(await count()).toEqual({ reports: 0, terminals: 0 });
    expect((await inspector.get(url)).body.voidReason).toBe('typed twice');
    expect((await inspector.put(url, reportBody(plant.id), 2)).status).toBe(409);
    expect((await engineer.put(`${url}/cause`, { cause: 'tooling' }, 2)).status).toBe(409);
  });

  test('nobody of another plant finds it', async () => {
    const { body: report } = await post();
    const url = `/api/v1/failures/${report.id}`;
    const stranger = await it.as('manager', [foreign.id]);
    const answers = [
      await stranger.get(url),
      await stranger.put(url, reportBody(plant.id), 1),
      await stranger.put(`${url}/cause`, { cause: 'tooling' }, 1),
      await stranger.put(`${url}/void`, { reason: 'not mine' }, 1),
      await stranger.get(`/api/v1/failures?plant=${plant.id}`),
      await stranger.get(`/api/v1/failures/marks?plantId=${plant.id}&field=station`),
    ];
    expect(answers.map(({ status }) => status)).toEqual(answers.map(() => 404));
    expect(
      (await stranger.get('/api/v1/failures')).body.items.every(
        (row: { plantId: string }) => row.plantId === foreign.id,
      ),
    ).toBe(true);
  });
});

describe('sorting into a cause', () => {
  test('every change is kept, with who, when, proof and reason', async () => {
    const { body: report } = await post();
    const url = `/api/v1/failures/${report.id}/cause`;
    await engineer.put(url, { cause: 'tooling', subCause: 'worn_applicator', origin: 'termination' }, 1);
    it.time.now = new Date('2026-06-16T10:00:00Z');
    const { body } = await engineer.put(
      url,
      {
        cause: 'handling',
        origin: 'lead_storage',
        proof: 'Lances bent in all directions',
        reason: 'Same box, several tools',
      },
      2,
    );
    it.time.now = new Date('2026-06-15T10:00:00Z');
    expect(body).toMatchObject({
      cause: 'handling',
      subCause: null,
      origin: 'lead_storage',
      sortedBy: 'Test engineer',
      version: 3,
    });
    expect(body.gatesPassed).toBe(2);
    expect(body.causeChanges).toMatchObject([
      { cause: 'handling', at: '2026-06-16T10:00:00.000Z', actor: 'Test engineer', reason: 'Same box, several tools' },
      { cause: 'tooling', subCause: 'worn_applicator', at: '2026-06-15T10:00:00.000Z' },
    ]);
  });

  test('takes the engineer’s role', async () => {
    const { body: report } = await post();
    expect((await inspector.put(`/api/v1/failures/${report.id}/cause`, { cause: 'tooling' }, 1)).status).toBe(403);
    expect((await post({ sorting: { cause: 'tooling' } })).status).toBe(403);
    expect((await post({ sorting: { cause: 'tooling' } }, engineer)).body.causeChanges).toHaveLength(1);
  });

  test('a fault is not made after it was found', async () => {
    const { body: report } = await post();
    const url = `/api/v1/failures/${report.id}`;
    const late = await engineer.put(`${url}/cause`, { cause: 'wire_dress', origin: 'final_assembly' }, 1);
    expect([late.status, late.body.errors[0].path]).toEqual([422, 'body/origin']);
    await engineer.put(`${url}/cause`, { cause: 'partial_seat', origin: 'insertion' }, 1);
    const earlier = await inspector.put(url, reportBody(plant.id, { found: 'termination' }), 2);
    expect([earlier.status, earlier.body.errors[0].path]).toEqual([422, 'body/found']);
  });

  test('a sub-cause belongs to its cause', async () => {
    const { body: report } = await post();
    const { status } = await engineer.put(
      `/api/v1/failures/${report.id}/cause`,
      { cause: 'tooling', subCause: 'glue_in_rework' },
      1,
    );
    expect(status).toBe(400);
  });
});
