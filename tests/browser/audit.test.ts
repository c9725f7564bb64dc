import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Asker } from '#tests/support/app.ts';
import { makePlant } from '#tests/support/master-data.ts';
import { type Dashboard, openDashboard } from './support/dashboard.ts';
import { expectAccessible, expectToFit } from './support/expectations.ts';

let dashboard: Dashboard;
let admin: Asker;
let own: string;

beforeAll(async () => {
  dashboard = await openDashboard({ now: '2026-06-17T10:00:00Z' });
  admin = await dashboard.it.as('administrator');
  own = (await makePlant(dashboard.it.db, { code: 'LIS', name: 'Lisbon works', zone: 'Europe/Lisbon' })).id;
  const other = (await makePlant(dashboard.it.db, { code: 'KOB', name: 'Kobe works', zone: 'Asia/Tokyo' })).id;
  const add = (kind: string, body: object) => admin.post(`/api/v1/${kind}`, body);
  const { id } = (await add('lines', { plantId: own, code: 'L1', name: 'Line one' })).body;
  await admin.put(`/api/v1/lines/${id}`, { plantId: own, code: 'L1', name: 'First line' }, 1);
  await add('lines', { plantId: other, code: 'L9', name: 'Line nine' });
  await add('customers', { code: 'CUS-1', name: 'Customer one' });
  await add('cost-rates', { plantId: own, kind: 'labour', validFrom: '2026-01-01', hourlyMinor: 4250 });
});
afterAll(() => dashboard.close());

test('shows who, when in the plant’s time, and what became what', async () => {
  const page = await dashboard.signIn('administrator');
  await page.goto('/audit');
  const row = page.getByRole('row', { name: /All changes of L1: changed/ });
  await row.waitFor();
  // 10:00 UTC is 11:00 in Lisbon in June.
  expect(await row.textContent()).toMatch(
    /17 Jun 2026, 11:00.*Test administrator.*Lisbon works.*Name: Line one.*First line/,
  );
  expect(await row.locator('del').allTextContents()).toEqual(['Line one']);
  await page.getByText('Per hour: EUR 42.50').waitFor();
  await expectAccessible(page);
});

test('is filtered by the address and by the page alike', async () => {
  const page = await dashboard.signIn('administrator');
  await page.goto('/audit?entity=customer');
  await page.getByRole('row', { name: /of CUS-1/ }).waitFor();
  expect(await page.getByRole('row').count()).toBe(2);
  await page.goto('/audit');
  await page
    .getByRole('row', { name: /All changes of L1: changed/ })
    .getByRole('link', { name: 'All changes of L1' })
    .click();
  await page.getByRole('button', { name: 'Changes of everything again' }).waitFor();
  await page.getByRole('row', { name: /of CUS-1/ }).waitFor({ state: 'detached' });
  expect(await page.getByRole('row').count()).toBe(3);
  await page.goto('/audit?from=2026-06-18');
  await page.getByText('No change fits').waitFor();
  await page.goto('/audit?to=2026-06-17');
  await page.getByRole('row', { name: /of CUS-1/ }).waitFor();
});

test('shows a manager the changes of the own plants', async () => {
  const page = await dashboard.signIn('manager', { plants: [own] });
  await page.goto('/audit');
  await page.getByRole('row', { name: /All changes of L1: changed/ }).waitFor();
  expect(await page.getByText('L9').count()).toBe(0);
  expect(await page.getByText('CUS-1').count()).toBe(0);
});

test('reads German and fits a phone', async () => {
  const page = await dashboard.signIn('administrator', { locale: 'de', width: 390 });
  await page.goto('/audit');
  await page.getByRole('heading', { name: 'Änderungsprotokoll' }).waitFor();
  await page.getByText('Je Stunde: 42,50').waitFor();
  await expectAccessible(page);
  await expectToFit(page);
});
