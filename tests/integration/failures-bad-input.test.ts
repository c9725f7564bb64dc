import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { Problem } from '#contracts/shared/problem.ts';
import { type Answer, type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import * as make from '#tests/support/master-data.ts';
import { reportBody } from '#tests/support/reports.ts';

let it: TestApp;
let plantId: string;
let report: { id: string };
let manager: Asker;

beforeAll(async () => {
  it = await createTestApp();
  plantId = (await make.makePlant(it.db)).id;
  manager = await it.as('manager', [plantId]);
  report = (await manager.post('/api/v1/failures', reportBody(plantId))).body;
});
afterAll(() => it.close());

const fields = Object.keys(reportBody('', {})).concat([
  'id',
  'externalRef',
  'foundAt',
  'builtOn',
  'lineId',
  'station',
  'stageId',
  'housingId',
  'toolIds',
  'cavities',
  'reelLot',
  'customerId',
  'effect',
  'quantityInspected',
  'lockState',
  'disposition',
  'safety',
  'note',
  'sorting',
]);
const nasty = fc.oneof(
  fc.anything({ maxDepth: 2 }),
  fc.constantFrom(
    '\0',
    '\ud800',
    1e308,
    -0,
    2 ** 53,
    '20260-01-01',
    '9999-12-31',
    '1e5',
    'a'.repeat(20_000),
    "'; drop table failure; --",
    '{"$gt":""}',
    [],
  ),
  fc.string({ unit: 'binary' }),
);

/** The whole of what could have changed. */
const state = () =>
  Promise.all([
    it.db.prisma.failure.findMany({ omit: { cavity: true } }),
    it.db.prisma.reportCounter.findMany(),
    it.db.prisma.costItem.count(),
    it.db.prisma.causeChange.count(),
    it.db.prisma.production.count(),
    it.db.prisma.savedFilter.count(),
    it.db.prisma.auditEntry.count(),
  ]);

function expectProblem({ status, body, headers }: Answer): void {
  expect(status).toBeGreaterThanOrEqual(400);
  expect(status).toBeLessThan(500);
  expect(String(headers['content-type'])).toContain('application/problem+json');
  expect(Problem.parse(body).detail.length).toBeGreaterThan(20);
}

const jsonOf = (value: unknown): string =>
  JSON.stringify(value, (_, it) => (typeof it === 'bigint' ? String(it) : it)) ?? 'null';

test('a report with one field replaced by anything is accepted whole or refused whole, never a fault of ours', async () => {
  await fc.assert(
    fc.asyncProperty(fc.constantFrom(...fields), nasty, async (field, value) => {
      const before = await it.db.prisma.failure.count();
      const answer = await manager.post('/api/v1/failures', jsonOf({ ...reportBody(plantId), [field]: value }));
      const after = await it.db.prisma.failure.count();
      if (answer.status === 201) expect(after - before).toBeLessThanOrEqual(1);
      else {
        expectProblem(answer);
        expect(after).toBe(before);
      }
    }),
    { numRuns: 250 },
  );
});

test('bodies of any shape change nothing, on every route that writes', async () => {
  const url = `/api/v1/failures/${report.id}`;
  const routes = [
    (body: string) => manager.put(url, body, 1),
    (body: string) => manager.put(`${url}/cause`, body, 1),
    (body: string) => manager.put(`${url}/void`, body, 1),
    (body: string) => manager.post(`${url}/costs`, body),
    (body: string) => manager.post(`${url}/photos`, body),
    (body: string) => manager.post('/api/v1/production', body),
    (body: string) => manager.post('/api/v1/saved-filters', body),
  ];
  const before = await state();
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom(...routes),
      fc.oneof(fc.string(), fc.anything().map(jsonOf)),
      async (route, body) => expectProblem(await route(body)),
    ),
    { numRuns: 300 },
  );
  expect(await state()).toEqual(before);
});

test('filters of any content answer or refuse', async () => {
  const key = fc.constantFrom(
    'q',
    'station',
    'plant',
    'cause',
    'from',
    'to',
    'gates',
    'cavity',
    'except',
    'cursor',
    'limit',
    'safety',
  );
  const paths = fc.constantFrom('failures', 'failures/count', 'production', 'failures/cavities');
  await fc.assert(
    fc.asyncProperty(
      paths,
      fc.array(fc.tuple(key, fc.oneof(fc.string({ unit: 'binary' }), fc.string())), { maxLength: 4 }),
      async (path, pairs) => {
        const query = new URLSearchParams(pairs.map(([name, text]) => [name, text.toWellFormed()] as [string, string]));
        const answer = await manager.get(`/api/v1/${path}?${query}`);
        if (answer.status !== 200) expectProblem(answer);
      },
    ),
    { numRuns: 300 },
  );
});

test('searches of any text answer', async () => {
  await fc.assert(
    fc.asyncProperty(fc.string({ unit: 'binary', minLength: 1, maxLength: 60 }), async (text) => {
      const q = encodeURIComponent(text.toWellFormed());
      const answer = await manager.get(`/api/v1/failures?q=${q}`);
      expect([200, 400]).toContain(answer.status);
    }),
    { numRuns: 300 },
  );
});

test('a token that has expired, or never was, is refused', async () => {
  const answer = await manager.get('/api/v1/failures', { headers: { authorization: `Bearer ${'x'.repeat(43)}` } });
  expect([answer.status, answer.body.code]).toEqual([401, 'token_invalid']);
});
