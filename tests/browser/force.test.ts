import { afterAll, beforeAll, expect, test } from 'vitest';
import * as make from '#tests/support/master-data.ts';
import { reportBody } from '#tests/support/reports.ts';
import { type Dashboard, openDashboard } from './support/dashboard.ts';
import { expectAccessible, expectToFit } from './support/expectations.ts';

let dashboard: Dashboard;
let terminalId: string;

beforeAll(async () => {
  dashboard = await openDashboard();
  const { it } = dashboard;
  const plant = await make.makePlant(it.db, { code: 'LIS', name: 'Lisbon works' });
  await make.makeStages(it.db, plant.id);
  terminalId = (await make.makeTerminal(it.db, { code: 'TC-09L', name: 'lance contact', minRetentionN: 40 })).id;
  const tools = [
    await make.makeTool(it.db, plant.id, { code: 'AP-1' }),
    await make.makeTool(it.db, plant.id, { code: 'AP-2' }),
  ];
  const inspector = await it.as('inspector');
  await inspector.post('/api/v1/failures', reportBody(plant.id, { terminalId, toolIds: [tools[1]!.id] }));
  await inspector.post('/api/v1/failures', reportBody(plant.id, { terminalId, toolIds: [tools[0]!.id] }));
  for (const [place, tool] of tools.entries())
    for (const day of ['2026-06-01', '2026-06-08'])
      await inspector.post('/api/v1/force', {
        plantId: plant.id,
        kind: 'retention',
        day,
        terminalId,
        toolId: tool.id,
        unit: 'N',
        values: [55, 57.5, 60, 58, 56, 59].map((value) => value - 17 * place),
      });
});
afterAll(() => dashboard.close());

test('the overview names who falls short, opens the terminal, and a weak sample leads to the reports of its tool', async () => {
  const page = await dashboard.signIn('engineer');
  await page.goto('/force');
  await page.getByText('falls short with AP-2 (LIS)').waitFor();
  await expectAccessible(page);
  await page.getByRole('link', { name: 'TC-09L · Retention force' }).click();
  await page.getByRole('heading', { name: 'Retention force of TC-09L', level: 1 }).waitFor();
  await page.getByText('The order is not random').waitFor();
  await page
    .getByRole('table', { name: 'Tool by tool, the weakest first' })
    .getByRole('row')
    .nth(1)
    .getByText('AP-2')
    .waitFor();
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Failure reports of TC-09L, AP-2' }).first().click();
  await page.getByRole('heading', { level: 1 }).waitFor();
  await expect.poll(() => page.url()).toContain('/failures?');
  await page
    .getByText(/1 report/)
    .first()
    .waitFor();
});

test('a column pasted on a phone becomes a sample, is corrected, and taken out', async () => {
  const page = await dashboard.signIn('inspector', { width: 390 });
  await page.goto(`/force/${terminalId}?kind=pull_out`);
  await page.getByText('No force sample here').waitFor();
  await expectToFit(page);
  await page.getByRole('button', { name: 'Enter a sample' }).click();
  await page.getByLabel('Minimum asked for, N').fill('60');
  await page.getByLabel('Values, N').fill('81,5\n79\nx');
  await page.getByText('“x” is no force above zero').waitFor();
  await page.getByLabel('Values, N').fill('81,5\n79\n58');
  await page.getByText('3 values read').waitFor();
  await expectToFit(page);
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByText('The sample is kept.').waitFor();
  await page.getByRole('button', { name: 'Close' }).click();
  await page.getByText('1 of 3').first().waitFor();
  await page.getByRole('button', { name: /^Correct the sample of/ }).click();
  await page.getByLabel('Values, N').fill('81.5 79 62 70 66 75 77 80');
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByText('0 of 8').first().waitFor();
  await expectToFit(page);
  await page.getByRole('button', { name: /^Take out the sample of/ }).click();
  await page.getByLabel('Why it does not count').fill('worn jaw');
  await page.getByRole('button', { name: 'Take out', exact: true }).click();
  await page.getByText('No force sample here').waitFor();
});
