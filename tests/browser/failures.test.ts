import sharp from 'sharp';
import { afterAll, beforeAll, expect, test } from 'vitest';
import * as make from '#tests/support/master-data.ts';
import { reportBody } from '#tests/support/reports.ts';
import { type Dashboard, openDashboard } from './support/dashboard.ts';
import { expectAccessible, expectToFit } from './support/expectations.ts';

let dashboard: Dashboard;
let plant: { id: string };
let first: { id: string; number: string };

beforeAll(async () => {
  dashboard = await openDashboard();
  const { it } = dashboard;
  plant = await make.makePlant(it.db, { code: 'LIS', name: 'Lisbon works' });
  await make.makeStages(it.db, plant.id);
  await make.makeCostRate(it.db, plant.id, 3600);
  const housing = await make.makeHousing(it.db, { code: 'HX-07', name: 'Door' });
  const manager = await it.as('manager');
  const record = async (fields: object) => (await manager.post('/api/v1/failures', reportBody(plant.id, fields))).body;
  for (let index = 0; index < 130; index++)
    await record({ foundOn: '2026-05-04', found: index % 2 ? 'field' : 'insertion', note: `series ${index}` });
  first = await record({
    foundOn: '2026-06-10',
    housingId: housing.id,
    cavities: ['A1', 'B2'],
    effect: 'heating',
    safety: true,
    note: 'Lance bent',
  });
});
afterAll(() => dashboard.close());

test('the list pages on, searches, filters and keeps all of it in the address', async () => {
  const page = await dashboard.signIn('viewer', { width: 1440 });
  await page.goto('/failures');
  await page.getByText('131 reports, 131 terminals').waitFor();
  const rows = page.locator('tbody tr:not([aria-hidden])');
  expect(await rows.count()).toBe(100);
  await expectAccessible(page);
  await expectToFit(page);
  await page.getByRole('button', { name: 'Show more' }).click();
  await expect.poll(() => rows.count()).toBe(131);
  expect(await page.getByRole('button', { name: 'Show more' }).count()).toBe(0);

  await page.getByRole('textbox', { name: 'Search notes' }).fill('lance');
  await page.keyboard.press('Enter');
  await page.getByText('1 report, 1 terminal').waitFor();
  expect(new URL(page.url()).search).toBe('?q=lance');
  await page.goBack();
  await page.getByText('131 reports').waitFor();
  await page.goto('/failures?found=field&from=2026-05-01');
  await page.getByText('65 reports, 65 terminals').waitFor();
  const href = await page.getByRole('link', { name: 'Export this list as CSV' }).getAttribute('href');
  const csv = await (await page.request.get(href ?? '')).text();
  expect(csv.trim().split('\r\n')).toHaveLength(66);
});

test('a filter is kept under a name, shown again and removed', async () => {
  const page = await dashboard.signIn('viewer');
  await page.goto('/failures?found=field');
  await page.getByText('65 reports').waitFor();
  await page.getByRole('button', { name: 'Saved filters' }).click();
  await page.getByRole('textbox', { name: 'Keep this filter as' }).fill('Field only');
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  await page.getByRole('button', { name: 'Field only', exact: true }).waitFor();
  await expectAccessible(page);
  await page.goto('/failures');
  await page.getByText('131 reports').waitFor();
  await page.getByRole('button', { name: 'Saved filters' }).click();
  await page.getByRole('button', { name: 'Field only', exact: true }).click();
  await page.getByText('65 reports').waitFor();
  expect(new URL(page.url()).searchParams.get('found')).toBe('field');
  await page.getByRole('button', { name: 'Saved filters' }).click();
  await page.getByRole('button', { name: 'Remove: Field only' }).click();
  await page.getByText('None yet.').waitFor();
});

test('the list of one housing shows where on its face, and a cavity opens its reports', async () => {
  const housing = await dashboard.it.db.prisma.housing.findFirstOrThrow();
  const page = await dashboard.signIn('viewer');
  await page.goto(`/failures?housing=${housing.id}`);
  await page.getByRole('heading', { name: 'Where on the face?' }).waitFor();
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Cavity B2: 1 report' }).click();
  await page.waitForURL(/cavityNamed=B2/);
  await page.getByText('1 report, 1 terminal').waitFor();
});

test('nothing found says what to do; a phone shows cards', async () => {
  const page = await dashboard.signIn('viewer', { width: 390 });
  await page.goto('/failures?q=nowhere');
  await page.getByText('No report fits the filter.').waitFor();
  await page.goto('/failures?q=lance');
  await page.getByRole('link', { name: first.number }).waitFor();
  await expectToFit(page);
  await expectAccessible(page);
});

test('a report is sorted, costed, corrected and voided, and shows its cautions', async () => {
  const page = await dashboard.signIn('manager', { width: 1440 });
  await page.goto(`/failures/${first.id}`);
  await page.getByRole('heading', { name: first.number }).waitFor();
  await page.getByText('tell the responsible product-safety person now').waitFor();
  await page.getByText('is a fire risk').waitFor();
  await page.getByRole('img', { name: 'Cavities: A1, B2' }).waitFor();
  await expectAccessible(page);

  await page.getByRole('button', { name: 'Sort into a cause' }).click();
  await page.getByRole('combobox', { name: 'Cause', exact: true }).click();
  await page.getByRole('option', { name: 'Tooling' }).click();
  await page.getByText('What usually proves it: crimp height or width off').waitFor();
  expect(await page.getByRole('combobox', { name: 'Made at stage' }).inputValue()).toBe('Termination (crimp)');
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Save the cause' }).click();
  await page.getByText('Nothing proves the cause yet').waitFor();
  await page.locator('input[type=file]').setInputFiles({
    name: 'p.png',
    mimeType: 'image/png',
    buffer: await sharp({ create: { width: 40, height: 30, channels: 3, background: '#333' } })
      .png()
      .toBuffer(),
  });
  await page.getByText('Nothing proves the cause yet').waitFor({ state: 'detached' });
  await page.getByRole('button', { name: /^Photo 1/ }).waitFor();

  await page.getByRole('button', { name: 'Add a cost' }).click();
  await page.getByRole('textbox', { name: 'or minutes' }).fill('90');
  await page.getByRole('button', { name: 'Save the cost' }).click();
  // 90 minutes at EUR 36.00 an hour.
  await page.getByRole('row', { name: /Rework labour.*EUR 54\.00/ }).waitFor();

  await page.getByRole('button', { name: 'Correct', exact: true }).click();
  await page.getByRole('textbox', { name: 'Note' }).fill('Lance bent by the removal tool');
  await page.getByRole('textbox', { name: 'Terminals found' }).fill('5');
  await page.getByRole('textbox', { name: 'Terminals inspected' }).fill('3');
  await page.getByRole('button', { name: 'Save the correction' }).click();
  await page.getByText('Some fields need correction').waitFor();
  await expectAccessible(page);
  await page.getByRole('textbox', { name: 'Terminals inspected' }).fill('12');
  await page.getByRole('button', { name: 'Save the correction' }).click();
  await page.getByText('Lance bent by the removal tool').waitFor();
  await page.getByText('5 of 12 inspected').waitFor();

  await page.getByRole('button', { name: 'Void', exact: true }).click();
  await page.getByRole('textbox', { name: 'Why' }).fill('typed twice');
  await page.getByRole('button', { name: 'Void the report' }).click();
  await page.getByText('Void since').waitFor();
  expect(await page.getByRole('button', { name: 'Correct', exact: true }).count()).toBe(0);
});

test('who corrected a report meanwhile is not overwritten', async () => {
  const { it } = dashboard;
  const engineer = await it.as('engineer');
  const { body: report } = await engineer.post('/api/v1/failures', reportBody(plant.id, { note: 'mine' }));
  const page = await dashboard.signIn('engineer');
  await page.goto(`/failures/${report.id}`);
  await page.getByRole('button', { name: 'Correct', exact: true }).click();
  await engineer.put(`/api/v1/failures/${report.id}`, reportBody(plant.id, { note: 'theirs' }), 1);
  await page.getByRole('textbox', { name: 'Note' }).fill('lost?');
  await page.getByRole('button', { name: 'Save the correction' }).click();
  await page.getByRole('alert').filter({ hasText: 'Somebody changed it meanwhile' }).waitFor();
  expect((await engineer.get(`/api/v1/failures/${report.id}`)).body.note).toBe('theirs');
});

test('a complaint is entered at the desk', async () => {
  const page = await dashboard.signIn('engineer');
  await page.goto('/failures/new');
  await page.getByRole('combobox', { name: 'Source' }).click();
  await page.getByRole('option', { name: 'Customer' }).click();
  await page.getByRole('combobox', { name: 'Found at stage' }).click();
  await page.getByRole('option', { name: 'warehouse' }).click();
  await page.getByRole('textbox', { name: 'Customer’s reference' }).fill('CR-4711');
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Save the report' }).click();
  await page.getByText('CR-4711').waitFor();
  await page.getByRole('heading', { name: /^LIS-26-/ }).waitFor();
});

test('production is entered, listed and corrected', async () => {
  const page = await dashboard.signIn('engineer');
  await page.goto('/production');
  await page.getByText('No production here').waitFor();
  await page.getByRole('button', { name: 'Enter production' }).click();
  await page.getByRole('textbox', { name: 'Units built' }).fill('120');
  await page.getByRole('textbox', { name: 'Terminals inserted' }).fill('2880');
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await page.getByText('1 added, 0 changed, 0 were the same.').waitFor();
  await page.getByRole('row', { name: /14 Jun 2026 LIS all all all 120 2,880/ }).waitFor();
  await page.getByRole('button', { name: 'Correct 14 Jun 2026, LIS' }).click();
  await page.getByRole('dialog').getByRole('textbox', { name: 'Units built' }).fill('119');
  await expectAccessible(page);
  await page.getByRole('dialog').getByRole('button', { name: 'Save' }).click();
  await page.getByRole('row', { name: /119 2,880/ }).waitFor();
});

test('speaks German', async () => {
  const page = await dashboard.signIn('manager', { locale: 'de' });
  for (const [path, heading] of [
    ['/failures', 'Fehler'],
    ['/failures/new', 'Neue Meldung'],
    [`/failures/${first.id}`, first.number],
    ['/production', 'Produktion'],
  ] as const) {
    await page.goto(path);
    await page.getByRole('heading', { level: 1, name: heading }).waitFor();
    await page.waitForLoadState('networkidle');
    expect(await page.locator('main').textContent()).not.toMatch(/\b(report|Found|Cause|Housing|Plant)\b/);
    await expectAccessible(page);
  }
});
