import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Asker } from '#tests/support/app.ts';
import { makeHousing, makeTerminal, makeTool } from '#tests/support/master-data.ts';
import { type Dashboard, openDashboard } from './support/dashboard.ts';
import { expectAccessible, expectToFit } from './support/expectations.ts';

let dashboard: Dashboard;
let admin: Asker;
let plant: string;

beforeAll(async () => {
  dashboard = await openDashboard({ now: '2026-06-17T10:00:00Z' });
  admin = await dashboard.it.as('administrator');
  const made = { code: 'LIS', name: 'Lisbon works', zone: 'Europe/Lisbon', currency: 'EUR' };
  plant = (await admin.post('/api/v1/plants', made)).body.id;
});
afterAll(() => dashboard.close());

const save = (page: Page) => page.getByRole('button', { name: 'Save', exact: true }).click();
const form = (page: Page) => page.getByRole('dialog');
const choose = async (page: Page, field: string | RegExp, option: string | RegExp) => {
  await form(page)
    .getByRole('combobox', { name: field })
    .or(form(page).getByRole('textbox', { name: field }))
    .first()
    .click();
  await page.getByRole('option', { name: option }).first().click();
};

describe('a new row', () => {
  test('is added, found, changed and retired', async () => {
    const page = await dashboard.signIn('administrator');
    await page.goto('/master-data/lines');
    await page.getByRole('button', { name: 'Add' }).click();
    await choose(page, 'Plant', /Lisbon/);
    await form(page).getByLabel('Code').fill('LINE-7');
    await save(page);
    await form(page).getByText('Please fill this in.').waitFor();
    await form(page).getByLabel('Name').fill('Seventh line');
    await save(page);
    await form(page).waitFor({ state: 'hidden' });
    await page.getByLabel('Search code or name').fill('seventh');
    await page.waitForURL(/[?&]q=seventh/);
    await page.getByRole('button', { name: 'LINE-7' }).click();
    await form(page).getByLabel('Name').fill('Line seven');
    await save(page);
    await form(page).waitFor({ state: 'hidden' });
    await page.getByLabel('Search code or name').fill('line seven');
    await page.waitForURL(/[?&]q=line/);
    await page.getByRole('button', { name: 'LINE-7' }).click();
    await form(page).getByRole('button', { name: 'Retire' }).click();
    await page.getByText('new reports can no longer choose it').waitFor();
    await page.getByRole('dialog', { name: 'Retire' }).getByRole('button', { name: 'Retire' }).click();
    await page.getByText('Nothing fits').waitFor();
    await page.getByLabel('Show retired ones').check();
    await page
      .getByRole('row', { name: /LINE-7/ })
      .getByText('retired')
      .waitFor();
    const { items } = (await admin.get('/api/v1/audit?entity=line')).body;
    expect(items.map(({ action }: { action: string }) => action)).toEqual(['retired', 'updated', 'created']);
  });

  test('that exists already is refused in words', async () => {
    const page = await dashboard.signIn('administrator');
    await page.goto('/master-data/customers?row=new');
    for (const _ of [1, 2]) {
      await page.goto('/master-data/customers?row=new');
      await form(page).getByLabel('Code').fill('CUS-1');
      await form(page).getByLabel('Name').fill('Customer');
      await save(page);
      await page.waitForTimeout(300);
    }
    await form(page).getByRole('alert').waitFor();
  });
});

describe('somebody else’s change', () => {
  test('is not overwritten: the present version is loaded and the own entry kept beside it', async () => {
    const { id } = await makeTool(dashboard.it.db, plant, { code: 'AP-9', name: 'Applicator nine' });
    const page = await dashboard.signIn('administrator');
    await page.goto(`/master-data/tools?row=${id}`);
    await form(page).getByLabel('Name').fill('Mine');
    const other = { plantId: plant, code: 'AP-9', name: 'Theirs', kind: 'applicator', cycleCount: 10 };
    expect((await admin.put(`/api/v1/tools/${id}`, other, 1)).status).toBe(200);
    await save(page);
    await form(page).getByText('Somebody changed it meanwhile').first().waitFor();
    await expectAccessible(page);
    await form(page).getByRole('button', { name: 'Load the present version' }).click();
    await form(page).getByText('You had entered: Mine').waitFor();
    expect(await form(page).getByLabel('Name').inputValue()).toBe('Theirs');
    await form(page).getByLabel('Name').fill('Both');
    await save(page);
    await form(page).waitFor({ state: 'hidden' });
    expect((await admin.get(`/api/v1/tools/${id}`)).body).toMatchObject({ name: 'Both', cycleCount: 10, version: 3 });
  });
});

describe('a housing', () => {
  test('has its face drawn, and cavities are taken away by mouse and by keyboard', async () => {
    const { id } = await makeHousing(dashboard.it.db, { code: 'H-23', rows: 2, columns: 3 });
    const page = await dashboard.signIn('administrator');
    await page.goto(`/master-data/housings?row=${id}`);
    const cavity = (name: string) => form(page).getByRole('button', { name, exact: true });
    await cavity('A1').click();
    await cavity('A2').focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Space');
    await form(page).getByText('It has 4 cavities').waitFor();
    expect(await cavity('B3').getAttribute('aria-pressed')).toBe('true');
    await expectAccessible(page);
    await save(page);
    await page.getByText('4 cavities in 2 × 3').waitFor();
    expect((await admin.get(`/api/v1/housings/${id}`)).body.missingCavities).toEqual(['A1', 'B3']);
  });
});

describe('a terminal', () => {
  test('shows mm² with the nearest gauge, and takes either', async () => {
    const { id } = await makeTerminal(dashboard.it.db, { code: 'T-AWG', wireMinMm2: 0.35, wireMaxMm2: 0.5 });
    const page = await dashboard.signIn('administrator');
    await page.goto('/master-data/terminals');
    await page.getByText('0.35 mm² (AWG 22) to 0.5 mm² (AWG 20)').waitFor();
    await page.getByRole('button', { name: 'T-AWG' }).click();
    await choose(page, 'Nearest gauge of: Largest wire', 'AWG 18');
    // ASTM B258: 18 AWG is 0.8230 mm².
    expect(
      await form(page)
        .getByLabel(/^Largest wire/)
        .inputValue(),
    ).toBe('0.823 mm²');
    await form(page)
      .getByLabel(/^Smallest wire/)
      .fill('2');
    await save(page);
    await form(page).getByText('Not below the smallest wire').waitFor();
    await form(page)
      .getByLabel(/^Smallest wire/)
      .fill('0.3');
    await save(page);
    await form(page).waitFor({ state: 'hidden' });
    expect((await admin.get(`/api/v1/terminals/${id}`)).body).toMatchObject({ wireMinMm2: 0.3, wireMaxMm2: 0.823 });
  });
});

describe('a tool', () => {
  test('says when its service is due, and takes a service in one press', async () => {
    const counts = { cycleCount: 60_500, serviceInterval: 50_000, servicedAtCount: 10_000 };
    const { id } = await makeTool(dashboard.it.db, plant, { code: 'AP-DUE', ...counts });
    const page = await dashboard.signIn('manager', { plants: [plant] });
    await page.goto('/master-data/tools?q=AP-DUE');
    await page.getByText('overdue by 500 cycles').waitFor();
    await page.getByRole('button', { name: 'AP-DUE' }).click();
    await form(page).getByRole('button', { name: 'Serviced today' }).click();
    await form(page).getByText('due in 50,000 cycles').waitFor();
    await save(page);
    await form(page).waitFor({ state: 'hidden' });
    expect((await admin.get(`/api/v1/tools/${id}`)).body).toMatchObject({
      servicedAtCount: 60_500,
      servicedOn: '2026-06-17',
    });
  });
});

describe('standard costs', () => {
  test('are a table by stage and disposition, changed from a day on', async () => {
    const page = await dashboard.signIn('manager', { plants: [plant] });
    await page.goto('/master-data/standard-costs');
    await page.getByText('Nothing on file yet').waitFor();
    await page.getByRole('button', { name: 'Change from a day on' }).click();
    await page.getByLabel('New values hold from').fill('2026-01-01');
    await page.getByLabel('Field, Replaced').fill('350');
    await page.getByLabel('Insertion, Reworked').fill('0.45');
    await page.getByRole('button', { name: 'Save 2 values' }).click();
    await page.getByText('EUR 350.00').waitFor();
    await page.getByRole('button', { name: 'Change from a day on' }).click();
    await page.getByLabel('New values hold from').fill('2026-06-01');
    await page.getByLabel('Insertion, Reworked').fill('0.60');
    await page.getByRole('button', { name: 'Save 1 value' }).click();
    await page.getByText('EUR 0.60').waitFor();
    await page.getByLabel('As it holds on').fill('2026-05-31');
    await page.getByText('EUR 0.45').waitFor();
    await expectAccessible(page);
    const rows = (await admin.get(`/api/v1/standard-costs?plant=${plant}`)).body.items;
    expect(rows.map((row: { terminalMinor: number }) => row.terminalMinor).sort()).toEqual([35_000, 45, 60]);
  });
});

describe('who may not change', () => {
  test('sees everything and is offered nothing', async () => {
    const page = await dashboard.signIn('viewer', { plants: [plant] });
    await page.goto('/master-data/plants');
    await page.getByRole('button', { name: 'LIS' }).click();
    await form(page).getByText('Changing it takes a role').waitFor();
    expect(await form(page).getByLabel('Name').isDisabled()).toBe(true);
    expect(
      await form(page)
        .getByRole('button', { name: /Save|Retire/ })
        .count(),
    ).toBe(0);
    expect(await page.getByRole('button', { name: 'Add' }).count()).toBe(0);
    await expectAccessible(page);
  });
});

describe('every kind', () => {
  const kinds = [
    'group',
    'plants',
    'lines',
    'stages',
    'tools',
    'customers',
    'housings',
    'terminals',
    'wires',
    'standard-costs',
    'cost-rates',
    'exchange-rates',
  ];
  test.each(kinds)('%s is accessible, reads German and fits a phone', async (kind) => {
    const page = await dashboard.signIn('administrator', { locale: 'de', width: 390 });
    const adds = !['group', 'standard-costs'].includes(kind);
    await page.goto(`/master-data/${kind}${adds ? '?row=new' : ''}`);
    await page.getByRole('heading', { level: 1 }).or(page.getByRole('dialog')).first().waitFor();
    await page.waitForTimeout(300);
    await expectAccessible(page);
    await expectToFit(page);
    if (adds) await form(page).getByRole('button', { name: 'Speichern' }).waitFor();
    await page.goto(`/master-data/${kind}`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.waitForTimeout(300);
    await expectAccessible(page);
    await expectToFit(page);
    await page.context().close();
  });
});
