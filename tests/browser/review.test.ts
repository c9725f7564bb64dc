import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Dashboard, openDashboard } from './support/dashboard.ts';
import { expectAccessible, expectSameCounts, expectToFit, figuresIn } from './support/expectations.ts';
import { now, setScene } from './support/scene.ts';

let dashboard: Dashboard;
let plant: string;

beforeAll(async () => {
  dashboard = await openDashboard({ now });
  ({ plant } = await setScene(dashboard.it));
});
afterAll(() => dashboard.close());

test('a manager reads the week, decides, closes it, and finds it as it was', async () => {
  const page = await dashboard.signIn('manager', { plants: [plant] });
  await page.goto('/review');
  await page.getByRole('heading', { name: 'Weekly review 2026-W24' }).waitFor();
  await expectSameCounts(page, await figuresIn(page, 'section:has(> h2:text-is("What slipped through"))'));
  await expectSameCounts(page, await figuresIn(page, 'section:has(> h2:text-is("What went wrong"))'));
  await expectAccessible(page);

  await page.getByRole('button', { name: 'Begin this review' }).click();
  await page.getByText('Open: decisions are being taken').first().waitFor();
  await page.getByLabel('What is decided').fill('Replace the worn die on line two');
  await page.getByRole('combobox', { name: 'Owner' }).click();
  await page.getByRole('option', { name: 'Test manager' }).click();
  await page.getByRole('button', { name: 'Write it down' }).click();
  await page.getByRole('cell', { name: 'Replace the worn die on line two' }).waitFor();
  await expectAccessible(page);

  await page.getByRole('button', { name: 'Close the review' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Close the review' }).click();
  await page
    .getByText(/Closed by Test manager/)
    .first()
    .waitFor();
  expect(await page.getByLabel('What is decided').count()).toBe(0);
  const shown = await page.getByRole('row', { name: /^Reports/ }).textContent();

  await page.goto('/review');
  await page.getByRole('link', { name: '2026-W24' }).first().click();
  await page.getByText('Figures as they were then').waitFor();
  expect(await page.getByRole('row', { name: /^Reports/ }).textContent()).toBe(shown);
  const sheet = await page.getByRole('link', { name: 'PDF for the plant' }).getAttribute('href');
  const pdf = await page.request.get(sheet!);
  expect([pdf.status(), pdf.headers()['content-type']]).toEqual([200, 'application/pdf']);

  await page.getByRole('button', { name: 'Correct in a new edition' }).click();
  await page.getByLabel('What was wrong').fill('Two reports came late.');
  await page.getByRole('button', { name: 'Begin the new edition' }).click();
  await page.getByText('Edition 2, corrected: Two reports came late.').first().waitFor();
});

test('a reader sees it in German on a phone, decides nothing, and is sent it by mail on a tick', async () => {
  const page = await dashboard.signIn('viewer', { plants: [plant], locale: 'de', width: 390 });
  await page.goto('/review?start=2026-05-27');
  await page.getByRole('heading', { name: 'Wochenbesprechung 2026-W22' }).waitFor();
  expect(await page.getByRole('button', { name: 'Diese Besprechung beginnen' }).count()).toBe(0);
  const tick = page.getByRole('checkbox', { name: /Lisbon works/ });
  const saved = page.waitForResponse((answer) => answer.request().method() === 'PUT');
  await tick.check();
  await saved;
  await page.reload();
  await tick.waitFor();
  expect(await tick.isChecked()).toBe(true);
  await expectToFit(page);
  await expectAccessible(page);
});
