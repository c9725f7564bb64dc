import { afterAll, beforeAll, expect, test } from 'vitest';
import { addDays } from '#contracts/shared/format.ts';
import { addProduction, addReports } from '#tests/support/facts.ts';
import * as make from '#tests/support/master-data.ts';
import { type Dashboard, openDashboard } from './support/dashboard.ts';
import { expectAccessible, expectSameCounts, expectToFit, figuresIn } from './support/expectations.ts';

let dashboard: Dashboard;
/** 52 weeks of production; about seven reports a week by six tools alike, and in the last six weeks twelve more of a fourth. */
beforeAll(async () => {
  dashboard = await openDashboard({ now: '2026-06-17T10:00:00Z' });
  const { db } = dashboard.it;
  const plantId = (await make.makePlant(db, { code: 'LIS', name: 'Lisbon works' })).id;
  await make.makeStages(db, plantId);
  const tools: string[] = [];
  for (const place of [1, 2, 3, 4, 5, 6, 7])
    tools.push((await make.makeTool(db, plantId, { code: `AP-${place}`, servicedOn: new Date('2026-05-04') })).id);
  const weeks = Array.from({ length: 52 }, (_, place) => addDays('2026-06-08', -7 * place));
  await addProduction(
    db,
    weeks.map((day) => ({ plantId, day, units: 1000, terminals: 100_000 })),
  );
  await addReports(
    db,
    weeks.flatMap((foundOn, place) => [
      ...Array.from({ length: 6 + (place % 3) }, (_, i) => ({
        plantId,
        foundOn,
        toolId: tools[(place + i) % 6]!,
        cause: 'tooling' as const,
      })),
      ...Array.from({ length: place < 6 ? 12 : 0 }, () => ({
        plantId,
        foundOn,
        toolId: tools[6]!,
        cause: 'tooling' as const,
      })),
    ]),
  );
});
afterAll(() => dashboard.close());

test('a chart says what it found and why it was chosen; each week opens as many reports as it shows', async () => {
  const page = await dashboard.signIn('viewer');
  await page.goto('/charts?cause=tooling');
  await page.getByText('The last point is beyond noise').waitFor();
  await page.getByText(/Chosen because there are enough reports/).waitFor();
  await page.getByRole('button', { name: 'Show as a table' }).first().click();
  const figures = await figuresIn(page, 'table');
  await expectSameCounts(page, figures.slice(-8));
  await page.getByText(/On the time axis: \d+ marks/).click();
  await page.getByRole('row', { name: /4 May 2026 Tool serviced AP-1/ }).waitFor();
  await expectAccessible(page);
});

test('another chart and frozen limits go into the address; too many reports for gaps is said', async () => {
  const page = await dashboard.signIn('viewer', { width: 390 });
  await page.goto('/charts?limits=frozen&points=20');
  await page.getByText('The last point is beyond noise').waitFor();
  await expectToFit(page);
  await page.getByRole('combobox', { name: 'Chart' }).click();
  await page.getByRole('option', { name: 'Days between reports (t)' }).click();
  await page.waitForURL(/kind=t/);
  await page.getByText('Too many reports for a chart of gaps').waitFor();
});

test('a signal in a sentence, its reports, and “not news” with a reason', async () => {
  const page = await dashboard.signIn('engineer', { width: 390 });
  await page.goto('/signals');
  const item = page.getByRole('listitem').filter({ hasText: 'Tool AP-7 at LIS' });
  await item.getByText(/72 reports where/).waitFor();
  await expectToFit(page);
  await expectAccessible(page);
  await item.getByRole('link', { name: '72 reports: Tool AP-7 at LIS' }).click();
  await page.getByText('72 reports').first().waitFor();
  await page.goBack();
  await item.getByRole('button', { name: 'Not news' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Why it is not news').fill('Replaced on Friday');
  await dialog.getByRole('button', { name: 'Not news' }).click();
  await page.getByRole('heading', { name: 'Called “not news”' }).waitFor();
  await page.getByText(/Replaced on Friday/).waitFor();
  await page.getByRole('button', { name: 'Make it news again' }).click();
  await item.getByText(/72 reports where/).waitFor();
  expect(await page.getByRole('heading', { name: 'Called “not news”' }).count()).toBe(0);
});
