import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Dashboard, openDashboard } from './support/dashboard.ts';
import { expectAccessible, expectToFit } from './support/expectations.ts';

let dashboard: Dashboard;

beforeAll(async () => {
  dashboard = await openDashboard();
});
afterAll(() => dashboard.close());

const enter = async (page: Page, email: string, password: string) => {
  await page.getByRole('textbox', { name: 'E-mail address' }).fill(email);
  await page.getByLabel(/^Password/).fill(password);
  await page.getByRole('button', { name: 'Sign in' }).click();
};

test('a stranger signs in and lands where the address pointed', async () => {
  const { email, password } = await dashboard.account();
  const page = await dashboard.visit({ width: 390 });
  await page.goto('/causes?cause=tooling');
  await page.getByRole('heading', { name: 'Sign in' }).waitFor();
  await expectAccessible(page);
  await expectToFit(page);

  await enter(page, email, 'not the password');
  expect(await page.getByRole('alert').textContent()).toContain('E-mail address or password is wrong');

  await enter(page, email, password);
  await page.getByRole('heading', { name: 'What goes wrong' }).waitFor();
  expect(new URL(page.url()).search).toBe('?cause=tooling');
});

test('never sends anybody to another site after signing in', async () => {
  const { email, password } = await dashboard.account();
  const page = await dashboard.visit();
  await page.goto('/sign-in?next=//elsewhere.invalid/');
  await enter(page, email, password);
  await page.waitForURL(`${dashboard.address}/`);
});

test('a first password must be changed before anything else', async () => {
  const { email, password } = await dashboard.account({ mustChangePassword: true });
  const page = await dashboard.visit();
  await page.goto('/escapes');
  await enter(page, email, password);
  await page.getByRole('heading', { name: 'Choose your own password' }).waitFor();
  await expectAccessible(page);

  await page.getByLabel('Password until now').fill(password);
  await page.getByLabel(/^New password(?! once)/).fill('short');
  await page.getByLabel('New password once more').fill('shorter');
  await page.getByRole('button', { name: 'Change the password' }).click();
  await page.getByText('The new password needs at least 12 characters.').waitFor();
  await page.getByText('The two new passwords differ.').waitFor();

  await page.getByLabel(/^New password(?! once)/).fill('four unrelated words');
  await page.getByLabel('New password once more').fill('four unrelated words');
  await page.getByRole('button', { name: 'Change the password' }).click();
  await page.getByRole('heading', { name: 'What slipped through' }).waitFor();
});

test('the own account: language, and signing out', async () => {
  const page = await dashboard.signIn('viewer');
  await page.goto('/account');
  await page.getByRole('heading', { name: 'My account' }).waitFor();
  await page.getByText('Viewer: all plants').waitFor();
  await expectAccessible(page);

  await page.getByRole('combobox', { name: 'Language' }).click();
  await page.getByRole('option', { name: 'Deutsch' }).click();
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByRole('heading', { name: 'Mein Konto' }).waitFor();
  expect(await page.locator('html').getAttribute('lang')).toBe('de');

  await page.getByRole('button', { name: 'Konto von Test viewer' }).click();
  await page.getByRole('menuitem', { name: 'Abmelden' }).click();
  await page.getByRole('heading', { name: 'Anmelden' }).waitFor();
  await page.goto('/causes');
  await page.getByRole('heading', { name: 'Anmelden' }).waitFor();
});

test('a session that ends while a page is open leads back to the same place', async () => {
  const { id, email, password } = await dashboard.account();
  const page = await dashboard.visit();
  await page.goto('/sign-in?next=/causes');
  await enter(page, email, password);
  await page.getByRole('heading', { name: 'What goes wrong' }).waitFor();

  await dashboard.it.db.prisma.session.deleteMany({ where: { personId: id } });
  await page.getByText('Terminals', { exact: true }).first().click();
  await page.getByRole('heading', { name: 'Sign in' }).waitFor();
  expect(new URL(page.url()).searchParams.get('next')).toBe('/causes?measure=terminals');
});
