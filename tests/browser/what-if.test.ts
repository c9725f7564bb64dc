import { afterAll, beforeAll, expect, test } from 'vitest';
import { addProduction, addReports } from '#tests/support/facts.ts';
import { type Dashboard, openDashboard } from './support/dashboard.ts';
import { expectAccessible, expectSameCounts, expectToFit, figuresIn } from './support/expectations.ts';
import { now, setScene } from './support/scene.ts';

let dashboard: Dashboard;
let plant: string;

beforeAll(async () => {
  dashboard = await openDashboard({ now });
  ({ plant } = await setScene(dashboard.it));
  const { db } = dashboard.it;
  await addReports(
    db,
    ['2026-02', '2026-03', '2026-04'].flatMap((month, place) =>
      Array.from({ length: 9 - place }, (_, i) => ({
        plantId: plant,
        builtOn: new Date(`${month}-10`),
        foundOn: `2026-0${2 + place + (i % 2)}-20`,
        source: 'field' as const,
        found: 10,
        origin: 4,
        cause: 'partial_seat' as const,
      })),
    ),
  );
  await addReports(db, [
    { plantId: plant, foundOn: '2026-02-01', found: 6 },
    { plantId: plant, foundOn: '2026-04-01', found: 10, source: 'customer' },
  ]);
  await addProduction(
    db,
    ['2026-02', '2026-03', '2026-04'].map((month) => ({
      plantId: plant,
      day: `${month}-10`,
      units: 5000,
      terminals: 100_000,
    })),
  );
});
afterAll(() => dashboard.close());

test('the triangle opens its reports, and reports without a build date are said', async () => {
  const page = await dashboard.signIn('viewer');
  await page.goto('/maturity');
  await page.getByRole('heading', { name: /Which build months fail more/ }).waitFor();
  const figures = await figuresIn(page, 'table:has-text("Built ↓")');
  expect(figures.map(({ text }) => text)).toContain('9');
  await expectSameCounts(page, figures);
  expect(await page.getByText('1 report without the day it was built').count()).toBe(1);
  await expectAccessible(page);
});

test('gates open their reports and take the cost of a point', async () => {
  const page = await dashboard.signIn('viewer');
  await page.goto('/gates');
  await page.getByRole('heading', { name: /How much of what reaches it/ }).waitFor();
  await expectSameCounts(page, await figuresIn(page, 'table:has-text("Gates in the order")'));
  await page.getByLabel(/costs a year at End-of-line/).fill('500');
  await page.getByLabel(/costs a year at End-of-line/).press('Enter');
  await page.waitForURL(/pointCost=electrical_test%3A50000/);
  await expectAccessible(page);
});

test('a scenario is computed, kept, and opened again with the same figures', async () => {
  const page = await dashboard.signIn('engineer');
  await page.goto(`/what-if/new?plant=${plant}`);
  await page.getByRole('button', { name: 'Compute' }).click();
  expect(await page.getByLabel('Cost at the start').getAttribute('aria-invalid')).toBe('true');
  await page.getByLabel('Cost at the start').fill('100');
  for (const [label, share] of [
    ['Least', '40'],
    ['Likeliest', '60'],
    ['Most', '80'],
  ] as const)
    await page.getByLabel(label, { exact: true }).fill(share);
  await page.getByRole('button', { name: 'Compute' }).click();
  const result = page.getByRole('region', { name: 'Result' });
  await result.getByRole('heading', { name: /What does each option save/ }).waitFor();
  const row = result.getByRole('row', { name: /Push-click-pull check/ });
  const computed = await row.textContent();
  await expectAccessible(page);
  await page.getByRole('textbox', { name: 'Name', exact: true }).fill('Check at insertion');
  await page.getByRole('button', { name: 'Keep for LIS' }).click();
  await page.getByRole('heading', { level: 1, name: 'Check at insertion' }).waitFor();
  await page.waitForURL(/what-if\/[0-9a-f-]{36}$/);
  await page.reload();
  const kept = page.getByRole('row', { name: /Push-click-pull check/ }).first();
  await kept.waitFor();
  expect(await kept.textContent()).toBe(computed);
  await page.getByText('40% to 80%, likeliest 60%').waitFor();
  await expectAccessible(page);
});

test('fit a phone', async () => {
  const page = await dashboard.signIn('engineer', { width: 390 });
  for (const path of ['/maturity', '/gates', `/what-if/new?plant=${plant}`, '/what-if']) {
    await page.goto(path);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.waitForLoadState('networkidle');
    await expectToFit(page);
  }
});
