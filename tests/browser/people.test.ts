import { afterAll, beforeAll, expect, test } from 'vitest';
import { makePlant } from '#tests/support/master-data.ts';
import { type Dashboard, openDashboard } from './support/dashboard.ts';
import { expectAccessible, expectToFit } from './support/expectations.ts';

let dashboard: Dashboard;

beforeAll(async () => {
  dashboard = await openDashboard({ now: '2026-06-17T10:00:00Z' });
  await makePlant(dashboard.it.db, { code: 'LIS', name: 'Lisbon works' });
});
afterAll(() => dashboard.close());

test('a person is added with roles, signs in with the first password and chooses another', async () => {
  const page = await dashboard.signIn('administrator');
  await page.goto('/people');
  await page.getByRole('button', { name: 'Add' }).click();
  const form = page.getByRole('dialog');
  await form.getByLabel('Name').fill('Alex Example');
  await form.getByLabel('E-mail address').fill('nonsense');
  await form.getByRole('button', { name: 'Save' }).click();
  await form.getByText('An e-mail address such as').waitFor();
  await form.getByText('At least 12 characters.').waitFor();
  await form.getByLabel('E-mail address').fill('alex@test.invalid');
  await form.getByRole('button', { name: 'Make one' }).click();
  const password = await form.getByLabel('First password').inputValue();
  expect(password).toMatch(/^[a-z2-9]{16}$/);
  await form.getByRole('button', { name: 'Add a role' }).click();
  await expectAccessible(page);
  await form.getByRole('button', { name: 'Save' }).click();
  await page.getByRole('row', { name: /Alex Example.*Viewer: all plants.*Viewer: Lisbon works/ }).waitFor();

  const theirs = await dashboard.visit();
  await theirs.goto('/sign-in');
  await theirs.getByLabel('E-mail address').fill('alex@test.invalid');
  await theirs.getByLabel(/^Password/).fill(password);
  await theirs.getByRole('button', { name: 'Sign in' }).click();
  await theirs.getByRole('heading', { name: 'Choose your own password' }).waitFor();
});

test('a password is reset and a person retired, each after a question or by a clear button', async () => {
  const target = await dashboard.account();
  const page = await dashboard.signIn('administrator');
  await page.goto(`/people?q=${target.id}`);
  await page.getByRole('button', { name: 'Test engineer' }).click();
  const form = page.getByRole('dialog');
  await form.getByLabel('First password').fill('another long password');
  await form.getByRole('button', { name: 'Set this password and end all sessions' }).click();
  await page.getByText('all sessions were ended').waitFor();
  await page.getByRole('button', { name: 'Test engineer' }).click();
  await form.getByRole('button', { name: 'Retire' }).click();
  await page.getByText('is signed out at once').waitFor();
  await page.getByRole('dialog', { name: 'Retire' }).getByRole('button', { name: 'Retire' }).click();
  await page.getByText('Nobody fits').waitFor();
  const person = await dashboard.it.db.prisma.person.findUniqueOrThrow({ where: { id: target.id } });
  expect(person.retiredAt).not.toBeNull();
  expect(person.mustChangePassword).toBe(true);
});

test('the own account cannot be retired here', async () => {
  const page = await dashboard.signIn('administrator');
  await page.goto('/people');
  const { id } = (await (await page.request.get('/api/v1/session')).json()) as { id: string };
  await page.goto(`/people?q=${id}&person=${id}`);
  await page.getByText('This is your own account').waitFor();
  expect(await page.getByRole('button', { name: 'Retire' }).count()).toBe(0);
});

test('a token’s secret is shown once, and works until it is revoked', async () => {
  const page = await dashboard.signIn('administrator');
  await page.goto('/tokens');
  await page.getByText('There is no token yet').waitFor();
  await page.getByRole('button', { name: 'Make a token' }).first().click();
  const form = page.getByRole('dialog');
  await form.getByLabel('What is it for').fill('Tester at line 3');
  await form.getByLabel('Holds until the end of').fill('2026-12-31');
  await form.getByRole('button', { name: 'Make a token' }).click();
  const secret = (await form.getByLabel('Secret of the token').textContent())?.trim() ?? '';
  await expectAccessible(page);
  await form.getByRole('button', { name: 'Copy the secret' }).waitFor();
  await form.getByRole('button', { name: 'I have kept it' }).click();
  expect(await page.getByText(secret).count()).toBe(0);
  const ask = () => fetch(`${dashboard.address}/api/v1/session`, { headers: { authorization: `Bearer ${secret}` } });
  expect((await ask()).status).toBe(200);
  await page
    .getByRole('row', { name: /Tester at line 3/ })
    .getByRole('button', { name: 'Revoke' })
    .click();
  await page.getByText('stops working at once').waitFor();
  await page.getByRole('dialog').getByRole('button', { name: 'Revoke' }).click();
  await page.getByRole('row', { name: /Tester at line 3 revoked/ }).waitFor();
  expect((await ask()).status).toBe(401);
});

test('who does not administer people finds no way there', async () => {
  const page = await dashboard.signIn('manager');
  await page.goto('/');
  await page.getByRole('navigation', { name: 'Pages' }).waitFor();
  expect(await page.getByRole('link', { name: 'People' }).count()).toBe(0);
  await page.goto('/people');
  await page.getByText('Your role does not allow this').first().waitFor();
});

test.each(['people', 'tokens', 'people?person=new'])(
  '%s is accessible, reads German and fits a phone',
  async (path) => {
    const page = await dashboard.signIn('administrator', { locale: 'de', width: 390 });
    await page.goto(`/${path}`);
    await page.getByRole('heading', { level: 1 }).or(page.getByRole('dialog')).first().waitFor();
    await page.waitForTimeout(300);
    await expectAccessible(page);
    await expectToFit(page);
  },
);
