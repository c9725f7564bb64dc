import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { addProduction, addReports } from '#tests/support/facts.ts';
import * as make from '#tests/support/master-data.ts';

let it: TestApp;
let plant: Awaited<ReturnType<typeof make.makePlant>>;
let sister: typeof plant;
let far: typeof plant;
let housing: Awaited<ReturnType<typeof make.makeHousing>>;
let engineer: Asker;
let atSister: Asker;
let atFar: Asker;

beforeAll(async () => {
  it = await createTestApp();
  plant = await make.makePlant(it.db, { code: 'LIS' });
  sister = await make.makePlant(it.db, { code: 'OSA', zone: 'Asia/Tokyo' });
  far = await make.makePlant(it.db, { code: 'MON' });
  housing = await make.makeHousing(it.db, { code: 'HSG-LOW' });
  engineer = await it.as('engineer', [plant.id]);
  atSister = await it.as('manager', [sister.id]);
  atFar = await it.as('manager', [far.id]);
  await addProduction(it.db, [
    { plantId: plant.id, day: '2026-05-04', housingId: housing.id, units: 400, terminals: 4800 },
    { plantId: plant.id, day: '2026-05-05', housingId: housing.id, units: 600, terminals: 7200 },
    { plantId: plant.id, day: '2026-05-06', housingId: housing.id, units: 900, terminals: 9000 },
  ]);
  await addReports(it.db, [
    {
      plantId: plant.id,
      foundOn: '2026-05-20',
      builtOn: new Date('2026-05-04'),
      housingId: housing.id,
      reelLot: 'LOW-1',
      quantityFound: 3,
    },
    {
      plantId: plant.id,
      foundOn: '2026-05-21',
      builtOn: new Date('2026-05-05'),
      housingId: housing.id,
      reelLot: 'OTHER',
    },
    {
      plantId: sister.id,
      foundOn: '2026-05-22',
      builtOn: new Date('2026-05-05'),
      housingId: housing.id,
      reelLot: 'LOW-1',
    },
  ]);
});
afterAll(() => it.close());

const scope = (more: object = {}) => ({
  plantId: plant.id,
  title: 'Low lances of one reel lot',
  housingIds: [housing.id],
  reelLots: ['LOW-1'],
  builtFrom: '2026-05-04',
  builtTo: '2026-05-06',
  ...more,
});
const open = async (more: object = {}) => {
  const answer = await engineer.post('/api/v1/containment', scope(more));
  expect(answer.status, JSON.stringify(answer.body)).toBe(201);
  return answer.body;
};
const url = (id: string, more = '') => `/api/v1/containment/${id}${more}`;

describe('the suspect population', () => {
  test('is what was built in the half-open days, an upper limit under a lot, with the reports of the scope', async () => {
    const { number, population } = await open();
    expect(number).toMatch(/^LIS-H26-\d{4}$/);
    expect(population).toMatchObject({
      units: 1000,
      narrower: true,
      suspect: 1000,
      stated: 0,
      unaccounted: 1000,
      reports: 1,
      reportedTerminals: 3,
    });
    const link = `plant=${plant.id}&housing=${housing.id}&lot=LOW-1&builtFrom=2026-05-04&builtTo=2026-05-06`;
    expect((await engineer.get(`/api/v1/failures/count?${link}`)).body.reports).toBe(population.reports);
  });
  test('says that nothing is known instead of guessing, and takes a better number with its basis', async () => {
    const empty = await open({ builtFrom: '2026-03-01', builtTo: '2026-03-02' });
    expect(empty.population).toMatchObject({ units: null, suspect: null, unaccounted: null });
    const counted = await open({ suspectQuantity: 240, suspectBasis: 'one reel holds 3000 terminals' });
    expect(counted.population.suspect).toBe(240);
    expect((await engineer.post('/api/v1/containment', scope({ suspectQuantity: 240 }))).status).toBe(400);
    expect((await engineer.post('/api/v1/containment', scope({ housingIds: [], reelLots: [] }))).status).toBe(400);
  });
  test('is accounted for place by place', async () => {
    const { id, version } = await open();
    const places = [
      { place: 'stock', quantity: 300 },
      { place: 'customer', quantity: 500 },
    ];
    const stated = await engineer.put(url(id, '/places'), { places }, version);
    expect(stated.body.population).toMatchObject({ stated: 800, unaccounted: 200 });
    expect((await engineer.put(url(id, '/places'), { places }, version)).status).toBe(412);
  });
});

describe('sorting', () => {
  test('counts finds once, as one failure report that carries the scope', async () => {
    const { id, version } = await open();
    await engineer.put(url(id, '/places'), { places: [{ place: 'stock', quantity: 300 }] }, version);
    const result = { place: 'stock', day: '2026-06-10', inspected: 100, found: 2, sample: false };
    const extra = { headers: { 'idempotency-key': 'sorting-0001' } };
    const first = await engineer.post(url(id, '/sortings'), result, extra);
    const again = await engineer.post(url(id, '/sortings'), result, extra);
    expect(again.body.sortings).toHaveLength(1);
    const report = (await engineer.get(`/api/v1/failures/${first.body.sortings[0].failureId}`)).body;
    expect(report).toMatchObject({
      source: 'audit',
      found: 'warehouse',
      quantityFound: 2,
      quantityInspected: 100,
      housingId: housing.id,
      reelLot: 'LOW-1',
      disposition: 'sorted',
    });
    const tooMany = await engineer.post(url(id, '/sortings'), { ...result, inspected: 201, found: 0 });
    expect(tooMany.status).toBe(422);
    const races = await Promise.all(
      [1, 2].map(() => engineer.post(url(id, '/sortings'), { ...result, inspected: 150, found: 0 })),
    );
    expect(races.map(({ status }) => status).sort()).toEqual([200, 422]);
    const stock = races
      .find(({ status }) => status === 200)!
      .body.places.find(({ place }: { place: string }) => place === 'stock');
    expect(stock).toMatchObject({ inspected: 250, found: 2, left: 50, limit: null });
  });
  test('says what a clean random sample leaves possible; a result withdrawn does not count', async () => {
    const { id, version } = await open();
    const stated = await engineer.put(url(id, '/places'), { places: [{ place: 'customer', quantity: 1000 }] }, version);
    const sorted = await engineer.post(url(id, '/sortings'), {
      place: 'customer',
      day: '2026-06-10',
      inspected: 100,
      found: 0,
      sample: true,
    });
    const place = sorted.body.places.find((it: { place: string }) => it.place === 'customer');
    // exact hypergeometric limit: C(1000 - D, 100) / C(1000, 100) > 0.05 holds up to D = 28
    expect(place.limit.items).toBe(28);
    const { id: sortingId } = sorted.body.sortings[0];
    const withdrawn = await engineer.put(
      url(id, `/sortings/${sortingId}/withdrawn`),
      { reason: 'wrong lot' },
      stated.body.version,
    );
    expect(withdrawn.body.places.find((it: { place: string }) => it.place === 'customer')).toMatchObject({
      inspected: 0,
      limit: null,
    });
    expect(
      (await engineer.put(url(id, `/sortings/${sortingId}/withdrawn`), { reason: 'twice' }, withdrawn.body.version))
        .status,
    ).toBe(409);
  });
  test('has a plan by the standard', async () => {
    const plan = (await engineer.get('/api/v1/containment/sample-plan?lot=1000&limit=0.65')).body;
    // ISO 2859-1, lot 501 to 1200, level II: letter J; AQL 0.65 in row J: sample 80, Ac 1
    expect(plan).toMatchObject({ codeLetter: 'J', sampleSize: 80, accept: 1, reject: 2, everyItem: false });
    expect((await engineer.get('/api/v1/containment/sample-plan?lot=1000&limit=0.66')).status).toBe(400);
  });
});

test('closing takes a clean point', async () => {
  const { id, version } = await open();
  expect((await engineer.put(url(id, '/closed'), { note: 'all sorted' }, version)).status).toBe(409);
  expect((await engineer.put(url(id, '/clean-point'), { reason: 'new reel' }, version)).status).toBe(400);
  const clean = await engineer.put(
    url(id, '/clean-point'),
    { from: '2026-05-06', lot: 'LOW-2', reason: 'lances measured' },
    version,
  );
  expect(clean.body).toMatchObject({ cleanFrom: '2026-05-06', cleanBy: engineer.name });
  const closed = await engineer.put(url(id, '/closed'), { note: 'all sorted' }, clean.body.version);
  expect(closed.body.closedAt).not.toBeNull();
  const after = { place: 'stock', day: '2026-06-10', inspected: 1, found: 0, sample: false };
  expect((await engineer.post(url(id, '/sortings'), after)).status).toBe(409);
});

describe('other plants', () => {
  test('that share the lot are told, see what they must, and answer; others are not told', async () => {
    const customer = await make.makeCustomer(it.db, { code: 'SECRET-CUSTOMER' });
    const complaint = await engineer.post('/api/v1/complaints', {
      plantId: plant.id,
      customerId: customer.id,
      title: 'Secret words of the customer',
      receivedAt: '2026-06-15T09:00:00Z',
    });
    const made = await open({ complaintId: complaint.body.id, title: 'Secret title' });
    expect(made.plants).toMatchObject([{ plantCode: 'OSA', shares: ['lot'], answer: null }]);
    const alerts = (await atSister.get('/api/v1/containment/alerts')).body.items;
    const alert = alerts.find(({ number }: { number: string }) => number === made.number);
    expect(alert).toMatchObject({ from: 'LIS', parts: ['HSG-LOW'], lots: ['LOW-1'], ownReports: 1 });
    expect(JSON.stringify(alert)).not.toMatch(/secret|customer/i);
    expect((await atSister.get(url(made.id))).status).toBe(404);
    expect((await atFar.get('/api/v1/containment/alerts')).body.items).toEqual([]);
    const answer = { affected: true, answer: 'forty left, held back' };
    expect((await atFar.put(url(`alerts/${alert.id}`), answer, 1)).status).toBe(404);
    expect((await atSister.put(url(`alerts/${alert.id}`), answer, 1)).status).toBe(200);
    expect((await atSister.put(url(`alerts/${alert.id}`), answer, 1)).status).toBe(412);
    expect((await engineer.get(url(made.id))).body.plants[0]).toMatchObject({
      affected: true,
      answer: 'forty left, held back',
    });
    expect(
      await it.db.prisma.notice.count({ where: { personId: atSister.id, kind: 'containment_alert' } }),
    ).toBeGreaterThan(0);
    expect(await it.db.prisma.notice.count({ where: { personId: atFar.id } })).toBe(0);
  });
});
