import { afterAll, beforeAll, expect, test } from 'vitest';
import * as make from '#tests/support/master-data.ts';
import { type Dashboard, openDashboard } from './support/dashboard.ts';
import { expectAccessible, expectToFit } from './support/expectations.ts';

let dashboard: Dashboard;
let plants: string[];
beforeAll(async () => {
  dashboard = await openDashboard();
  const { db } = dashboard.it;
  const plant = await make.makePlant(db, { code: 'LIS', name: 'Lisbon works' });
  await make.makeStages(db, plant.id);
  await make.makeLine(db, plant.id, { code: 'L1', name: 'Doors' });
  plants = [plant.id];
});
afterAll(() => dashboard.close());

const list = (rows: string) => ({
  name: 'Meldungen.csv',
  mimeType: 'text/csv',
  buffer: Buffer.from(
    `Fehlerliste;;;;;;\nMeldung;Linie;Gefunden am;Fundort;Anzahl;Ursache;Irgendwas\n${rows}`,
    'latin1',
  ),
});
const rows =
  'A-1;L1;04.05.2026;EOL;2;Werkzeug;x\nA-2;L9;05.05.2026;EOL;1;Werkzeug;y\nA-3;L9;06.05.2026;EOL;viele;Geister;z\n';

test('a list goes from upload through questions and unknown values to reports', async () => {
  const page = await dashboard.signIn('manager', { plants, width: 1440 });
  await page.goto('/imports');
  await page.getByText('No import yet').waitFor();
  await expectAccessible(page);
  await page.locator('input[type=file]').setInputFiles(list(rows));
  await page.getByRole('combobox', { name: 'Source' }).or(page.getByLabel('Source')).first().fill('Line book');
  await page.getByRole('button', { name: 'Upload', exact: true }).click();

  await page.getByRole('heading', { name: 'Meldungen.csv' }).waitFor();
  await page.getByText('parted by semicolon; the columns are named on line 2').waitFor();
  await page.getByText('Still to be said: Source of the report.').waitFor();
  expect(await page.getByRole('combobox', { name: 'Meaning of Ursache' }).inputValue()).toBe('Cause');
  await expectAccessible(page);
  await expectToFit(page);
  await page.getByRole('combobox', { name: 'Source of the report' }).click();
  await page.getByRole('option', { name: 'Line', exact: true }).click();
  await page.getByRole('button', { name: 'Check the file' }).click();

  await page
    .getByText('In which order are the dates of “Found on” written? Example: 04.05.2026')
    .waitFor({ timeout: 20_000 });
  await expectAccessible(page);
  await page.getByRole('radio', { name: 'day, month, year' }).check();
  await page.getByRole('button', { name: 'Check the file' }).click();

  await page.getByText('These values of the file are not known here').waitFor({ timeout: 20_000 });
  await expectAccessible(page);
  const line = page.getByRole('row', { name: /L9/ });
  await line.getByRole('button', { name: 'Make new' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Make new' }).click();
  await line.getByText('new: L9').waitFor();
  await page
    .getByRole('row', { name: /Geister/ })
    .getByRole('combobox')
    .click();
  await page.getByRole('option', { name: 'Undetermined' }).click();
  await page.getByRole('button', { name: 'Keep 2 meanings and check again' }).click();

  await page.getByText('What the import will do').waitFor({ timeout: 20_000 });
  await page.getByRole('cell', { name: 'is not a number' }).waitFor();
  await expectAccessible(page);
  await expectToFit(page);
  const importing = page.getByRole('button', { name: 'Import 2 rows' });
  expect(await importing.isDisabled()).toBe(true);
  await page.getByRole('checkbox', { name: 'Import the others and leave out 1 refused row' }).check();
  await importing.click();

  await page.getByText(/^Imported, /).waitFor({ timeout: 20_000 });
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Open the reports of this import' }).click();
  await page.getByText('2 reports, 3 terminals').waitFor();
});

test('the same list again asks nothing that was answered, and holds nothing new', async () => {
  const page = await dashboard.signIn('manager', { plants, locale: 'de', width: 390 });
  await page.goto('/imports');
  await page.locator('input[type=file]').setInputFiles(list(rows.split('\n').slice(0, 2).join('\n')));
  await page.getByLabel('Quelle').first().fill('Line book');
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Hochladen', exact: true }).click();
  await page.getByRole('button', { name: 'Datei prüfen' }).click();
  await page.getByText('In dieser Datei ist nichts Neues.').waitFor({ timeout: 20_000 });
  await expectAccessible(page);
  await expectToFit(page);
  await page.getByRole('button', { name: 'Diese Datei aufgeben' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Diese Datei aufgeben' }).click();
  await page.getByText('Diese Datei wurde aufgegeben').waitFor();
  await page.getByRole('link', { name: 'Zu allen Importen' }).click();
  await page.getByText('Aufgegeben', { exact: true }).waitFor();
  await expectToFit(page);
});
