import { afterAll, beforeAll, expect, test } from 'vitest';
import { createTestApp, type TestApp } from '#tests/support/app.ts';

let it: TestApp;
beforeAll(async () => {
  it = await createTestApp();
});
afterAll(() => it.close());

test('a person keeps filters by name, and nobody else sees them', async () => {
  const one = await it.as('viewer');
  const two = await it.as('viewer');
  const url = '/api/v1/saved-filters';
  const filter = { page: 'failures', name: 'Probe damage', query: 'cause=probe_damage' };
  const { status, body } = await one.post(url, filter);
  expect([status, body]).toMatchObject([201, filter]);
  const again = await one.post(url, { ...filter, query: 'cause=probe_damage&from=2026-01-01' });
  expect(again.body.id).toBe(body.id);
  expect((await one.get(url)).body.items).toEqual([again.body]);
  expect((await two.get(url)).body.items).toEqual([]);
  expect((await two.delete(`${url}/${body.id}`)).status).toBe(404);
  expect((await one.delete(`${url}/${body.id}`)).status).toBe(204);
  expect((await one.get(url)).body.items).toEqual([]);
  const audit = await it.db.prisma.auditEntry.findMany({ where: { entityId: body.id }, orderBy: { id: 'asc' } });
  expect(audit.map(({ action }) => action)).toEqual(['saved', 'changed', 'removed']);
});
