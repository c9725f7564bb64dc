import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Dashboard, openDashboard } from './support/dashboard.ts';
import { expectAccessible, expectToFit } from './support/expectations.ts';

let dashboard: Dashboard;

beforeAll(async () => {
  dashboard = await openDashboard();
});
afterAll(() => dashboard.close());

test.each([
  ['/', 'A week without a report'],
  ['/causes', 'No report fits the filter.'],
  ['/escapes', 'No report fits the filter.'],
])('an empty ledger says so: %s', async (address, words) => {
  const page = await dashboard.signIn('administrator', { width: 820 });
  await page.goto(address);
  await page.getByText(words).waitFor();
  expect(await page.getByRole('alert').count()).toBe(0);
  await expectAccessible(page);
  await expectToFit(page);
});

test('an address that does not exist leads back', async () => {
  const page = await dashboard.signIn('viewer');
  await page.goto('/nowhere');
  await page.getByRole('heading', { name: 'There is no such page' }).waitFor();
  await expectAccessible(page);
  await page.getByRole('link', { name: 'To the week' }).click();
  await page.getByText('A week without a report').waitFor();
});
