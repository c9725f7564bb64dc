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

test('a person lands on the last full week of their plants', async () => {
  const page = await dashboard.signIn('manager');
  await page.goto('/');
  await page.getByRole('heading', { name: 'Week 2026-W24' }).waitFor();
  // 12 + 6 + 3 + 1 reports in the week, 2 in the week before.
  const reports = page.getByRole('row', { name: /^Reports 22/ });
  expect(await reports.textContent()).toContain('22');
  await page.getByRole('link', { name: 'Tooling' }).count();
  await expectAccessible(page);
  await page.getByText('tell the responsible product-safety person now').waitFor();
});

test('every figure opens its reports, with the same count', async () => {
  const page = await dashboard.signIn('viewer');
  await page.goto('/');
  await page.getByRole('heading', { name: 'Top causes' }).waitFor();
  await expectSameCounts(page, await figuresIn(page, 'table:has-text("simultaneous")'));
  const headline = (name: RegExp) => page.getByRole('row', { name }).evaluate((row) => row.outerHTML);
  expect(await headline(/^Passed two or more gates/)).toContain('gates=2');
  const figures = await figuresIn(page, 'table:has-text("This week")');
  // Rows in order: reports, terminals, rate, money, money, escaped, outside. Counts of reports:
  const rows = figures.filter(({ query }) => !query.includes('cost='));
  await expectSameCounts(page, [rows[0]!]);
  await expectSameCounts(page, [rows[1]!], 'terminals');
  await expectSameCounts(page, rows.slice(-2));
});

test('by keyboard: past the index into the page, and on to another page', async () => {
  const page = await dashboard.signIn('viewer');
  await page.goto('/');
  await page.getByRole('heading', { name: 'The figures' }).waitFor();
  await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Skip to the content');
  await page.keyboard.press('Enter');
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('content');

  await page.getByRole('link', { name: 'Causes', exact: true }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'What goes wrong' }).waitFor();
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('What goes wrong');
  expect(await page.title()).toBe('What goes wrong · Escape Ledger');
});

test('goes back a week by keyboard and keeps the week in the address', async () => {
  const page = await dashboard.signIn('viewer');
  await page.goto('/');
  const back = page.getByRole('button', { name: 'One week back' });
  await back.focus();
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Week 2026-W23' }).waitFor();
  expect(new URL(page.url()).searchParams.get('start')).toBe('2026-06-01');
  await page.reload();
  await page.getByRole('heading', { name: 'Week 2026-W23' }).waitFor();
});

test('reads German, fits a phone, and says when there is nothing', async () => {
  const page = await dashboard.signIn('viewer', { locale: 'de', width: 390 });
  await page.goto('/?start=2026-02-02');
  await page.getByRole('heading', { name: 'Woche 2026-W06' }).waitFor();
  await page.getByText('Eine Woche ohne Meldung').waitFor();
  await expectToFit(page);
  await expectAccessible(page);
});
