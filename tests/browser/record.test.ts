import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, test } from 'vitest';
import * as make from '#tests/support/master-data.ts';
import { type Dashboard, openDashboard } from './support/dashboard.ts';
import { expectAccessible, expectToFit } from './support/expectations.ts';

let dashboard: Dashboard;
let plant: { id: string };

beforeAll(async () => {
  dashboard = await openDashboard();
  const { db } = dashboard.it;
  plant = await make.makePlant(db, { code: 'LIS', name: 'Lisbon works' });
  await make.makeLine(db, plant.id, { code: 'L1', name: 'Line 1' });
  await make.makeStages(db, plant.id);
  await make.makeHousing(db, { code: 'HX-07', name: 'Door, 12 way', rows: 2, columns: 6, missingCavities: ['B3'] });
  await make.makeHousing(db, { code: 'HX-99', name: 'Restraint, 2 way', rows: 1, columns: 2, safetyRelevant: true });
});
afterAll(() => dashboard.close());

const inspector = (locale: 'en' | 'de' = 'en', width = 820) =>
  dashboard.signIn('inspector', { plants: [plant.id], locale, width });
const reports = () => dashboard.it.db.prisma.failure.findMany({ omit: { cavity: true }, orderBy: { number: 'asc' } });

async function choose(page: Page, label: string, option: string): Promise<void> {
  await page.getByRole('combobox', { name: label }).click();
  await page.getByRole('option', { name: option }).click();
}

async function standAt(page: Page, stage: string): Promise<void> {
  await page.goto('/record');
  await choose(page, 'Line', 'L1');
  await page.getByRole('combobox', { name: 'Shift' }).fill('Early');
  await choose(page, 'Found at stage', stage);
  await page.getByRole('button', { name: 'Done' }).click();
}

const photo = async () => ({
  name: 'camera.jpg',
  mimeType: 'image/jpeg',
  buffer: await sharp({ create: { width: 320, height: 240, channels: 3, background: '#804020' } })
    .jpeg()
    .toBuffer(),
});

test('a failure is recorded by touch, with cavity and photo, and the tablet remembers where it stands', async () => {
  const page = await inspector();
  await standAt(page, 'electrical_test');
  await choose(page, 'Housing', 'HX-07');
  await page.getByRole('checkbox', { name: 'A2', exact: true }).click();
  expect(await page.getByRole('checkbox', { name: 'B3', exact: true }).count()).toBe(0);
  await page.getByRole('radio', { name: 'Intermittent' }).check();
  await page.getByRole('button', { name: 'One more' }).click();
  await page.locator('input[type=file]').setInputFiles(await photo());
  await page.getByRole('img', { name: 'Photo 1' }).waitFor();
  await expectAccessible(page);
  await expectToFit(page);
  await page.getByRole('button', { name: 'Record', exact: true }).click();
  await page.getByRole('link', { name: 'LIS-26-00001' }).waitFor();

  const [report] = await reports();
  expect(report).toMatchObject({
    found: 6,
    shift: 'Early',
    cavities: ['A2'],
    effect: 'intermittent',
    quantityFound: 2,
    photoCount: 1,
    foundOn: new Date('2026-06-15T00:00:00Z'),
  });
  await page.reload();
  await page.getByText('Lisbon works · L1 · Early').waitFor();
  await page.getByRole('radio', { name: 'HX-07' }).waitFor();
});

test('everything a thumb presses is at least 48 px', async () => {
  const page = await inspector();
  await standAt(page, 'insertion');
  await choose(page, 'Housing', 'HX-07');
  await page.getByRole('checkbox', { name: 'A1', exact: true }).waitFor();
  const small = await page.locator('main form').evaluate((form) =>
    [
      ...form.querySelectorAll(
        'button:not(details button, [aria-label="No housing"]), label:has(input[type=radio]), [role=checkbox] rect, summary',
      ),
    ]
      .map((it) => ({ it: it.textContent || it.getAttribute('aria-label'), box: it.getBoundingClientRect() }))
      .filter(({ box }) => box.height > 0 && (box.height < 48 || box.width < 48))
      .map(({ it, box }) => `${it} ${box.width} × ${box.height}`),
  );
  expect(small).toEqual([]);
});

test('cavities are picked by keyboard, past a cavity that is not there', async () => {
  const page = await inspector();
  await standAt(page, 'lock_check');
  await choose(page, 'Housing', 'HX-07');
  await page.getByRole('checkbox', { name: 'A1', exact: true }).focus();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press(' ');
  expect(await page.getByRole('checkbox', { name: 'B4', exact: true }).getAttribute('aria-checked')).toBe('true');
  await page.getByText('Which cavities: B4').waitFor();
});

test('a safety-relevant housing and heating show their cautions', async () => {
  const page = await inspector();
  await standAt(page, 'product_test');
  await choose(page, 'Housing', 'HX-99');
  await page.getByText('tell the responsible product-safety person now').waitFor();
  await page.getByRole('radio', { name: 'Heating' }).check();
  await page.getByRole('button', { name: 'Record', exact: true }).click();
  await page.getByText('Heating at a poor power contact is a fire risk').waitFor();
});

test('without a network it is kept, survives a reload, and is recorded exactly once when the network is back', async () => {
  const page = await inspector();
  await standAt(page, 'final_assembly');
  await choose(page, 'Housing', 'HX-07');
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    while (!(await (await caches.open('escape-ledger-pages')).match('/record')))
      await new Promise((again) => setTimeout(again, 100));
  });
  const before = (await reports()).length;
  await page.reload();
  await page.getByRole('button', { name: 'Record', exact: true }).waitFor();

  await page.context().setOffline(true);
  await page.getByRole('textbox', { name: 'Note' }).fill('No network');
  await page.locator('input[type=file]').setInputFiles(await photo());
  await page.reload();
  await expect.poll(() => page.getByRole('textbox', { name: 'Note' }).inputValue()).toBe('No network');
  await page.getByRole('img', { name: 'Photo 1' }).waitFor();
  await page.getByRole('button', { name: 'Record', exact: true }).click();
  await page.getByText('1 report is waiting to be sent').waitFor();
  await page.reload();
  await page.getByText('1 report is waiting to be sent').waitFor();
  expect(await reports()).toHaveLength(before);

  await page.context().setOffline(false);
  await page.getByText('1 report is waiting to be sent').waitFor({ state: 'detached' });
  await page.reload();
  const kept = (await reports()).filter(({ note }) => note === 'No network');
  expect(kept).toHaveLength(1);
  expect(kept[0]).toMatchObject({ found: 7, photoCount: 1 });
});

test('an answer that was lost on its way does not double the report', async () => {
  const page = await inspector();
  await standAt(page, 'insertion');
  const note = page.getByRole('textbox', { name: 'Note' });
  await note.fill('Answer lost');
  let lost = 0;
  await page.route('**/api/v1/failures', async (route) => {
    if (route.request().method() !== 'POST' || lost > 0) return route.fallback();
    lost += 1;
    await route.fetch();
    return route.abort();
  });
  await page.getByRole('button', { name: 'Record', exact: true }).click();
  await page.getByRole('button', { name: 'Send now' }).click();
  await page.getByText('waiting to be sent').waitFor({ state: 'detached' });
  expect(lost).toBe(1);
  expect((await reports()).filter((it) => it.note === 'Answer lost')).toHaveLength(1);
});

test('what the server refuses stays, says why, and can be corrected', async () => {
  const page = await inspector();
  await standAt(page, 'insertion');
  await page.getByText('Lots, tool, terminal, other day').click();
  await page.getByLabel('Found on another day').fill('2026-06-20');
  await page.getByRole('textbox', { name: 'Note' }).fill('Wrong day');
  await page.getByRole('button', { name: 'Record', exact: true }).click();
  await page.getByText(/The server did not take it: At the plant it is 2026-06-15/).waitFor();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Correct it' }).click();
  await page.getByLabel('Found on another day').fill('2026-06-14');
  await page.getByRole('button', { name: 'Record', exact: true }).click();
  await page.getByText('Recorded as').first().waitFor();
  const [report] = (await reports()).filter((it) => it.note === 'Wrong day');
  expect(report?.foundOn).toEqual(new Date('2026-06-14T00:00:00Z'));
});

test('speaks German and fits a phone', async () => {
  const page = await inspector('de', 390);
  await page.goto('/record');
  await page.getByRole('heading', { name: 'Fehler erfassen' }).waitFor();
  await page.getByText('Sagen Sie zuerst, wo dieses Gerät steht').waitFor();
  await expectToFit(page);
  await expectAccessible(page);
});
