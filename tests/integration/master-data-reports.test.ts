import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { makeHousing } from '#tests/support/master-data.ts';
import { reportBody } from '#tests/support/reports.ts';

let t: TestApp;
let admin: Asker;

beforeAll(async () => {
  t = await createTestApp();
  admin = await t.as('administrator');
});
afterAll(() => t.close());

let serial = 0;
async function makePlant() {
  const plant = { code: `R${++serial}`, name: 'Plant', zone: 'Europe/Lisbon', currency: 'EUR' };
  const id: string = (await admin.post('/api/v1/plants', plant)).body.id;
  const stages = (await admin.get(`/api/v1/stages?plant=${id}`)).body.items;
  return { id, stage: (common: string) => stages.find((stage: { common: string }) => stage.common === common) };
}
const standard = (plantId: string, stage: string, terminalMinor: number, validFrom = '2026-01-01') =>
  admin.post('/api/v1/standard-costs', { plantId, stage, disposition: 'reworked', validFrom, terminalMinor });
const report = async (plantId: string, fields: object) =>
  (await admin.post('/api/v1/failures', reportBody(plantId, { disposition: 'reworked', ...fields }))).body;
const figures = async (id: string) => {
  const { standardMinor, gate, gateMinor, gatesPassed, version } = await t.db.prisma.failure.findFirstOrThrow({
    where: { id },
  });
  return [
    standardMinor === null ? null : Number(standardMinor),
    gate,
    gateMinor && Number(gateMinor),
    gatesPassed,
    version,
  ];
};
const sorting = { cause: 'partial_seat', subCause: null, origin: 'insertion', proof: null };

describe('the figures of reports on file', () => {
  it('follow the standard costs: added, changed, dated, retired', async () => {
    const { id: plantId } = await makePlant();
    const { id } = await report(plantId, { found: 'product_test', foundOn: '2026-06-10', quantityFound: 3, sorting });
    // Origin 4, found 8: it passed stages 5, 6 and 7; the first able to see a partial seat is 5.
    expect(await figures(id)).toEqual([null, 5, null, 3, 1]);
    const { body: late } = await standard(plantId, 'product_test', 1000);
    const { body: gate } = await standard(plantId, 'lock_check', 40);
    expect(await figures(id)).toEqual([3000, 5, 120, 3, 1]);
    await standard(plantId, 'product_test', 2000, '2026-06-01');
    await standard(plantId, 'product_test', 5000, '2026-06-11');
    expect(await figures(id)).toEqual([6000, 5, 120, 3, 1]);
    const { id: _, version: __, retiredAt: ___, ...input } = late;
    await admin.put(`/api/v1/standard-costs/${late.id}`, { ...input, validFrom: '2026-06-05' }, 1);
    expect(await figures(id)).toEqual([3000, 5, 120, 3, 1]);
    await admin.put(`/api/v1/standard-costs/${gate.id}/retired`, { retired: true }, 1);
    expect(await figures(id)).toEqual([3000, 5, null, 3, 1]);
  });

  it('follow the plant’s stages', async () => {
    const { id: plantId, stage } = await makePlant();
    await standard(plantId, 'electrical_test', 70);
    const { id } = await report(plantId, { found: 'product_test', foundOn: '2026-06-10', sorting });
    expect(await figures(id)).toEqual([null, 5, null, 3, 1]);
    const lock = stage('lock_check');
    await admin.put(`/api/v1/stages/${lock.id}/retired`, { retired: true }, 1);
    expect(await figures(id)).toEqual([null, 6, 70, 2, 1]);
    await admin.put(`/api/v1/stages/${lock.id}/retired`, { retired: false }, 2);
    expect(await figures(id)).toEqual([null, 5, null, 3, 1]);
  });

  it('of other plants stay as they are', async () => {
    const one = await makePlant();
    const other = await makePlant();
    const { id } = await report(other.id, { found: 'field', foundOn: '2026-06-10' });
    await standard(one.id, 'field', 900);
    expect((await figures(id))[0]).toBeNull();
  });

  it('follow a whole table of standard costs, saved at once or not at all', async () => {
    const { id: plantId } = await makePlant();
    const { id } = await report(plantId, { found: 'product_test', foundOn: '2026-06-10', sorting });
    const cell = (stage: string, terminalMinor: number | null, version: number | null) => ({
      stage,
      disposition: 'reworked',
      terminalMinor,
      version,
    });
    const save = (...cells: object[]) =>
      admin.put('/api/v1/standard-costs', { plantId, validFrom: '2026-01-01', cells }, 1);
    expect((await save(cell('product_test', 1000, null), cell('lock_check', 50, null))).body.items).toHaveLength(2);
    expect(await figures(id)).toEqual([1000, 5, 50, 3, 1]);
    const raced = await save(cell('lock_check', 60, 1), cell('product_test', 1100, null));
    expect(raced.body).toMatchObject({ status: 412, code: 'changed_meanwhile' });
    expect(await figures(id)).toEqual([1000, 5, 50, 3, 1]);
    const twice = await save(cell('lock_check', 60, 1), cell('lock_check', 70, 1));
    expect(twice.body).toMatchObject({ status: 400, errors: [{ path: 'body/cells' }] });
    await save(cell('lock_check', 60, 1), cell('product_test', null, 1));
    expect(await figures(id)).toEqual([null, 5, 60, 3, 1]);
    const trail = await t.db.prisma.auditEntry.findMany({
      where: { plantId, entity: 'standard_cost' },
      orderBy: { id: 'asc' },
    });
    expect(trail.map(({ action }) => action)).toEqual(['created', 'created', 'updated', 'retired']);
  });
});

describe('what reports name', () => {
  it('keeps its meaning: the common stage of a stage, the cavities of a face', async () => {
    const { id: plantId, stage } = await makePlant();
    const housing = await makeHousing(t.db, { rows: 2, columns: 3 });
    const test = stage('electrical_test');
    const { status } = await admin.post(
      '/api/v1/failures',
      reportBody(plantId, { stageId: test.id, found: 'electrical_test', housingId: housing.id, cavities: ['B3'] }),
    );
    expect(status).toBe(201);
    const { id: _, version: __, retiredAt: ___, ...input } = test;
    const moved = await admin.put(`/api/v1/stages/${test.id}`, { ...input, common: 'product_test' }, 1);
    expect(moved.body).toMatchObject({ status: 409, errors: [{ path: 'body/common' }] });
    expect((await admin.put(`/api/v1/stages/${test.id}`, { ...input, name: 'Circuit test' }, 1)).status).toBe(200);

    const face = {
      code: housing.code,
      name: housing.name,
      rows: 2,
      columns: 3,
      retentionStyle: housing.retentionStyle,
      secondaryLock: housing.secondaryLock,
    };
    const url = `/api/v1/housings/${housing.id}`;
    expect((await admin.put(url, { ...face, columns: 2 }, 1)).body).toMatchObject({
      status: 409,
      detail: expect.stringContaining('B3'),
    });
    expect((await admin.put(url, { ...face, missingCavities: ['B3'] }, 1)).status).toBe(409);
    expect((await admin.put(url, { ...face, missingCavities: ['A1'] }, 1)).status).toBe(200);
  });

  it('cannot be chosen for a new report once retired, and stays readable', async () => {
    const { id: plantId, stage } = await makePlant();
    const add = async (kind: string, body: object) => (await admin.post(`/api/v1/${kind}`, body)).body.id as string;
    const rows: [field: string, kind: string, id: string][] = [
      ['lineId', 'lines', await add('lines', { plantId, code: 'L1', name: 'Line' })],
      ['stageId', 'stages', stage('electrical_test').id],
      [
        'housingId',
        'housings',
        await add('housings', {
          code: 'H-R',
          name: 'Housing',
          rows: 1,
          columns: 2,
          retentionStyle: 'housing_latch',
          secondaryLock: 'none',
        }),
      ],
      [
        'terminalId',
        'terminals',
        await add('terminals', { code: 'T-R', name: 'T', wireMinMm2: 0.35, wireMaxMm2: 0.5 }),
      ],
      ['wireId', 'wires', await add('wires', { code: 'W-R', name: 'Wire', sectionMm2: 0.5 })],
      ['customerId', 'customers', await add('customers', { code: 'C-R', name: 'Customer' })],
    ];
    for (const [field, kind, id] of rows) {
      const body = reportBody(plantId, { [field]: id });
      expect((await admin.post('/api/v1/failures', body)).status, field).toBe(201);
      expect((await admin.put(`/api/v1/${kind}/${id}/retired`, { retired: true }, 1)).status, kind).toBe(200);
      expect((await admin.post('/api/v1/failures', body)).body, field).toMatchObject({ status: 422 });
      expect((await admin.get(`/api/v1/${kind}/${id}`)).body).toMatchObject({ id });
    }
  });
});
