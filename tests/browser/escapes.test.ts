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

test('every cell of the matrix opens its reports, with the same count', async () => {
  const page = await dashboard.signIn('viewer');
  await page.goto('/escapes');
  await page.getByRole('heading', { name: 'How far did the faults travel?' }).waitFor();
  const figures = await figuresIn(page, 'table:has-text("Origin by stage found")');
  // crimp: 12 | sum; insertion: 6, 3 | sum; without origin: 2, 1 | sum; and the row of sums.
  expect(figures.map(({ text }) => text)).toEqual([
    '12',
    '12',
    '6',
    '3',
    '9',
    '2',
    '1',
    '3',
    '6',
    '14',
    '1',
    '3',
    '24',
  ]);
  await expectSameCounts(page, figures);
  await expectAccessible(page);
});

test('faults that passed two or more gates', async () => {
  const page = await dashboard.signIn('viewer');
  await page.goto('/escapes');
  // Crimp to electrical test passes 3 gates, insertion to field 5: 12 + 3.
  const link = page.locator('a[href*="gates=2"]');
  await link.waitFor();
  expect(await link.textContent()).toBe('Open 15 reports');
  const query = (await link.getAttribute('href'))?.replace('/failures', '') ?? '';
  await expectSameCounts(page, [{ text: '15', query }]);
});

test('booked and estimated money stay apart and look different', async () => {
  const page = await dashboard.signIn('viewer');
  await page.goto('/escapes?weight=booked');
  const cost = page.locator('dl', { hasText: 'never added to the booked sum' });
  await cost.waitFor();
  const text = (await cost.textContent()) ?? '';
  // 12 × 9.00 + 3 × 400.00 booked, 3 × 125.00 estimated.
  expect(text).toContain('1.31');
  expect(text).toMatch(/~\s*EUR\s375/);
  expect(await cost.locator('em').first().textContent()).toContain('estimated');
  await page.getByText('common practice without a source').waitFor();
});

test('the flow picture stands upright on a phone', async () => {
  const page = await dashboard.signIn('viewer', { width: 390, locale: 'de' });
  await page.goto('/escapes');
  const picture = page.locator('svg[data-upright]');
  await picture.waitFor();
  expect(await picture.locator('a').count()).toBe(3);
  await expectToFit(page);
  await expectAccessible(page);
});
