import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import * as make from '#tests/support/master-data.ts';
import { reportBody } from '#tests/support/reports.ts';

let it: TestApp;
let plant: Awaited<ReturnType<typeof make.makePlant>>;
let other: typeof plant;
let housing: Awaited<ReturnType<typeof make.makeHousing>>;
let everyone: Asker;

beforeAll(async () => {
  it = await createTestApp();
  plant = await make.makePlant(it.db, { code: 'LIS' });
  other = await make.makePlant(it.db, { code: 'BRN' });
  housing = await make.makeHousing(it.db, { code: 'HX-24' });
  everyone = await it.as('administrator');
  await make.makeStages(it.db, plant.id);
  await make.makeStandardCost(it.db, plant.id, 8, 'reworked', 1500);
  const record = async (fields: object, plantId = plant.id) =>
    expect((await everyone.post('/api/v1/failures', reportBody(plantId, fields))).status).toBe(201);
  for (let day = 1; day <= 9; day++) await record({ foundOn: `2026-05-0${day}`, station: day % 2 ? 'odd' : 'even' });
  for (let index = 0; index < 12; index++) await record({ foundOn: '2026-05-05', station: 'crowd', shift: 'A, early' });
  await record({ foundOn: '2026-04-01', housingId: housing.id, cavities: ['A1'], note: 'Lanze verbogen, Box 7/3' });
  await record({ foundOn: '2026-04-02', housingId: housing.id, cavities: ['A1', 'B2'], reelLot: 'R-100/7' });
  await record({ foundOn: '2026-04-03', housingId: housing.id, note: '端子が抜けた' });
  await record({ foundOn: '2026-04-04', found: 'product_test', disposition: 'reworked', quantityFound: 3 });
  await record({
    foundOn: '2026-04-05',
    found: 'product_test',
    sorting: { cause: 'partial_seat', origin: 'insertion', proof: 'Re-seats with a click' },
  });
  await record({ foundOn: '2026-04-06', source: 'field', found: 'field', effect: 'heating' }, other.id);
});
afterAll(() => it.close());

const numbersOf = (items: { number: string }[]) => items.map(({ number }) => number);
async function readAll(query: string, limit: number) {
  const rows = [];
  let cursor: string | null = '';
  do {
    const { status, body } = await everyone.get(
      `/api/v1/failures?${query}&limit=${limit}${cursor && `&cursor=${cursor}`}`,
    );
    expect(status).toBe(200);
    rows.push(...body.items);
    cursor = body.next;
  } while (cursor);
  return rows;
}

describe('the list', () => {
  test('pages of any size give every report once, newest found first', async () => {
    const whole = await readAll('', 200);
    expect(whole).toHaveLength(27);
    expect(new Set(numbersOf(whole)).size).toBe(27);
    expect(whole.map(({ foundOn }) => foundOn)).toEqual(
      whole
        .map(({ foundOn }) => foundOn)
        .sort()
        .reverse(),
    );
    for (const limit of [1, 4, 5, 26, 27]) expect(numbersOf(await readAll('', limit))).toEqual(numbersOf(whole));
  });

  test.each([
    ['station=odd', 5],
    ['station=odd&station=even', 9],
    ['station=none', 6],
    ['station=none&station=odd', 11],
    ['shift=A, early', 12],
    ['from=2026-05-05&to=2026-05-06', 13],
    ['found=product_test,field', 3],
    ['source=field', 1],
    ['effect=heating', 1],
    ['cause=partial_seat', 1],
    ['cause=none&from=2026-04-01&to=2026-04-06', 4],
    ['origin=insertion', 1],
    ['cavity=A1', 1],
    ['cavity=several', 1],
    ['cavityNamed=A1', 2],
    ['cavityNamed=A1&cavityNamed=B2', 2],
    ['cavityNamed=B2', 1],
    ['lot=R-100/7', 1],
    ['evidence=true', 1],
    ['evidence=false&from=2026-04-01&to=2026-04-06', 4],
    ['gates=2', 1],
    ['avoidable=true', 1],
    ['cost=estimated', 1],
    ['cost=booked', 0],
    ['safety=true', 0],
    ['q=Lanze', 1],
    ['q=lanz', 1],
    ['q=verbogen lanze', 1],
    ['q=verbogen schraube', 0],
    ['q=HX-24', 3],
    ['q=hx', 3],
    ['q=hx lanze', 1],
    ['q=R-100/7', 1],
    ['q=端子が抜けた', 1],
    ['q=click', 1],
    ['q=%26%21%3A%2A%28', 0],
    ["q=';--", 0],
    ['q=%25', 0],
  ])('%s selects %i, in the list and in the count', async (query, reports) => {
    const url = new URLSearchParams(query).toString();
    const rows = await readAll(url, 200);
    expect(rows).toHaveLength(reports);
    const terminals = rows.reduce((sum, { quantityFound }) => sum + quantityFound, 0);
    expect((await everyone.get(`/api/v1/failures/count?${url}`)).body).toEqual({ reports, terminals });
  });

  test('a report that arrives while somebody pages is neither doubled nor lost', async () => {
    const { body: first } = await everyone.get('/api/v1/failures?limit=10');
    await everyone.post('/api/v1/failures', reportBody(other.id, { foundOn: '2026-06-01', note: 'late' }));
    const { body: second } = await everyone.get(`/api/v1/failures?limit=200&cursor=${first.next}`);
    const seen = numbersOf([...first.items, ...second.items]);
    expect(seen).toHaveLength(27);
    expect(new Set(seen).size).toBe(27);
  });

  test('names of parts and plants come along, costs in the plant’s currency', async () => {
    const [row] = await readAll('cavity=several', 5);
    expect(row).toMatchObject({
      plantCode: 'LIS',
      housingCode: 'HX-24',
      cavities: ['A1', 'B2'],
      cost: { currency: 'EUR', bookedMinor: 0, estimatedMinor: 0, standardMinor: null },
    });
    const [estimated] = await readAll('cost=estimated', 5);
    expect(estimated.cost.standardMinor).toBe(3 * 1500);
  });

  test('a foreign cursor, an unknown word or a wrong day is refused with its place', async () => {
    for (const query of ['cursor=abc', 'cause=magic', 'from=2026-13-01', 'limit=1000', 'plant=1', 'gates=x'])
      expect((await everyone.get(`/api/v1/failures?${query}`)).body).toMatchObject({
        status: 400,
        code: 'invalid_request',
      });
  });
});

test('failures per cavity: a report that names several counts on each', async () => {
  const { body } = await everyone.get(`/api/v1/failures/cavities?housing=${housing.id}`);
  expect(body).toEqual({
    reports: 3,
    withoutCavity: 1,
    cavities: [
      { cavity: 'A1', reports: 2 },
      { cavity: 'B2', reports: 1 },
    ],
  });
});

test('marks used lately, the most used first', async () => {
  const { body } = await everyone.get(`/api/v1/failures/marks?plantId=${plant.id}&field=station`);
  expect(body.items).toEqual(['crowd', 'odd', 'even']);
  const typed = await everyone.get(`/api/v1/failures/marks?plantId=${plant.id}&field=station&q=O`);
  expect(typed.body.items).toEqual(['odd']);
});

test('what belongs to other plants is neither listed nor counted nor exported', async () => {
  const here = await it.as('viewer', [other.id]);
  const { body } = await here.get('/api/v1/failures?q=BRN');
  expect(new Set(body.items.map(({ plantCode }: { plantCode: string }) => plantCode))).toEqual(new Set(['BRN']));
  expect((await here.get('/api/v1/failures/count')).body.reports).toBe(2);
  expect((await here.get('/api/v1/failures/export?format=csv')).body).not.toContain('LIS-');
});
