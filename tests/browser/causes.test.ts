import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Dashboard, openDashboard } from './support/dashboard.ts';
import { expectAccessible, expectSameCounts, expectToFit, figuresIn } from './support/expectations.ts';
import { now, setScene } from './support/scene.ts';

let dashboard: Dashboard;

beforeAll(async () => {
  dashboard = await openDashboard({ now });
  await setScene(dashboard.it);
});
afterAll(() => dashboard.close());

test('ranks the causes, says how sure, and every count opens its reports', async () => {
  const page = await dashboard.signIn('viewer');
  await page.goto('/causes');
  // 12 of 24 reports.
  await page.getByRole('heading', { name: 'Tooling weighs most: 50% of all reports' }).waitFor();
  const row = page.getByRole('row', { name: /^Tooling 12/ });
  expect(await row.textContent()).toContain('50.0%');
  const figures = await figuresIn(page, 'table');
  expect(figures.map(({ text }) => text)).toEqual(['12', '9', '3', '24']);
  await expectSameCounts(page, figures);
  await expectAccessible(page);
});

test('sorts its table by a column, and says so', async () => {
  const page = await dashboard.signIn('viewer');
  await page.goto('/causes');
  const header = page.getByRole('columnheader', { name: 'Cause', exact: true });
  await header.getByRole('button').click();
  const names = () => page.locator('tbody th').allTextContents();
  const order = await header.getAttribute('aria-sort');
  const ascending = ['not given', 'Partial seat', 'Tooling'];
  expect(await names()).toEqual(order === 'ascending' ? ascending : ascending.toReversed());
  await header.getByRole('button').click();
  expect(await header.getAttribute('aria-sort')).not.toBe(order);
  expect(await names()).toEqual(order === 'ascending' ? ascending.toReversed() : ascending);
});

test('keeps dimension, measure and filter in the address', async () => {
  const page = await dashboard.signIn('viewer');
  await page.goto('/causes?found=field');
  await page.getByText('Found at: Field').waitFor();
  await page.getByRole('combobox', { name: 'Ranked by' }).click();
  await page.getByRole('option', { name: 'Housing', exact: true }).click();
  await page.getByRole('row', { name: /^HSG-A 3/ }).waitFor();
  await page.getByText('Cost with estimates').click();
  await page.waitForURL(/measure=withEstimates/);
  expect(new URL(page.url()).search).toContain('dimension=housing');
  await page.getByRole('button', { name: 'Take out: Found at' }).click();
  await page.getByRole('row', { name: /^HSG-A 24/ }).waitFor();
  await page.goBack();
  await page.getByText('Found at: Field').waitFor();
});

test('a filter is added by keyboard and looked up by name', async () => {
  const { it } = dashboard;
  const housing = await it.db.prisma.housing.findFirstOrThrow({ where: { code: 'HSG-A' } });
  const page = await dashboard.signIn('viewer');
  await page.goto(`/causes?housing=${housing.id}`);
  await page.getByText('Housing: HSG-A').waitFor();

  await page.getByRole('button', { name: 'Filter', exact: true }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').getByRole('button', { name: 'Cause', exact: true }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('checkbox', { name: 'Partial seat' }).check();
  await page.getByRole('button', { name: 'Apply' }).click();
  await page.getByRole('heading', { name: 'Partial seat weighs most: 100% of all reports' }).waitFor();
  expect(new URL(page.url()).searchParams.get('cause')).toBe('partial_seat');
});

test('chooses whole weeks, and says when nothing fits', async () => {
  const page = await dashboard.signIn('viewer', { width: 390 });
  await page.goto('/causes');
  await page.getByRole('button', { name: 'Period' }).click();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Last full week' }).click();
  await page.waitForURL(/from=2026-06-08&to=2026-06-15/);
  await page.getByRole('row', { name: /Tooling/ }).waitFor();
  await expectToFit(page);
  await page.goto('/causes?cause=adhesive&gates=many');
  await page.getByText('No report fits the filter.').waitFor();
});

test('shows the refusal and tries again', async () => {
  const page = await dashboard.signIn('viewer');
  await page.route('**/api/v1/analyses/pareto*', (route) => route.abort(), { times: 3 });
  await page.goto('/causes');
  await page.getByText('The server cannot be reached').waitFor();
  await page.getByRole('button', { name: 'Try again' }).click();
  await page.getByRole('heading', { name: /Tooling weighs most/ }).waitFor();
});
