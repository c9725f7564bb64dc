import { afterAll, beforeAll, expect, test } from 'vitest';
import { newId } from '#api/platform/ids.ts';
import { type Dashboard, openDashboard } from './support/dashboard.ts';
import { expectAccessible, expectToFit } from './support/expectations.ts';
import { now, setScene } from './support/scene.ts';

let dashboard: Dashboard;
let plant: string;

beforeAll(async () => {
  dashboard = await openDashboard({ now });
  ({ plant } = await setScene(dashboard.it));
});
afterAll(() => dashboard.close());

/** An action with what would count as proof, owned by an engineer of the plant. */
async function makeAction(title: string) {
  const { it } = dashboard;
  const owner = await it.as('engineer', [plant]);
  const manager = await it.as('manager', [plant]);
  const effect = {
    scope: { cause: 'tooling' },
    before: { from: '2026-06-01', to: '2026-06-17' },
    cleanPoint: '2026-06-17',
    reduction: 0.8,
  };
  const input = {
    id: newId(),
    plantId: plant,
    kind: 'corrective',
    title,
    ownerId: owner.id,
    dueOn: '2026-06-18',
    effect,
  };
  const made = await manager.post('/api/v1/actions', input);
  expect(made.status).toBe(201);
  return { id: input.id, owner, version: made.body.version as number };
}

test('from opening to verification by another person', async () => {
  const page = await dashboard.signIn('engineer', { plants: [plant] });
  await page.goto('/actions');
  await page.getByRole('heading', { name: 'No action fits' }).or(page.getByText('No action fits')).first().waitFor();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Open an action' }).click();
  const form = page.getByRole('dialog');
  await form.getByLabel('Action', { exact: false }).first().fill('Fit the new applicator');
  await form.getByRole('combobox', { name: 'Owner' }).or(form.getByLabel('Owner')).first().click();
  await page.getByRole('option', { name: 'Test engineer' }).first().click();
  await expectAccessible(page);
  await form.getByRole('button', { name: 'Open an action' }).click();
  await page.getByRole('link', { name: /^LIS-A26-/ }).click();
  await page.getByRole('heading', { name: /Fit the new applicator/ }).waitFor();

  await page.getByRole('button', { name: 'It was carried out' }).click();
  await page.getByText('Add evidence first').waitFor();
  await page.getByLabel('What shows that it was done').fill('AP-9 fitted, twenty crimps measured');
  await page.getByRole('button', { name: 'Add it' }).click();
  await page.getByText('AP-9 fitted, twenty crimps measured').first().waitFor();
  await page.getByRole('button', { name: 'It was carried out' }).click();
  await page.getByText('It waits for another person').waitFor();
  expect(await page.getByRole('button', { name: 'Verify it' }).count()).toBe(0);

  const second = await dashboard.signIn('manager', { plants: [plant], width: 390 });
  await second.goto(page.url());
  await second.getByRole('button', { name: 'Verify it' }).click();
  await second.getByRole('dialog').getByRole('textbox').fill('Seen on the line');
  await second.getByRole('dialog').getByRole('button', { name: 'Verify it' }).click();
  await second.getByRole('button', { name: 'Open it again' }).waitFor();
  await expectToFit(second);
});

test('what would count as proof is stated, its figures open their reports, on a phone and in German too', async () => {
  const { id } = await makeAction('Wear limit for applicators');
  const page = await dashboard.signIn('viewer', { plants: [plant] });
  await page.goto(`/actions/${id}`);
  await page.getByRole('heading', { name: 'Did it hold?' }).waitFor();
  await page.getByText('Promised: 80% less').waitFor();
  const link = page.getByRole('link', { name: '12 reports', exact: true });
  const query = (await link.getAttribute('href'))?.replace('/failures', '') ?? '';
  const answer = await page.request.get(`/api/v1/failures/count${query}`);
  expect((await answer.json()).reports).toBe(12);
  await expectAccessible(page);
  const phone = await dashboard.signIn('viewer', { plants: [plant], width: 390, locale: 'de' });
  await phone.goto(`/actions/${id}`);
  await phone.getByRole('heading', { name: 'Hat es gewirkt?' }).waitFor();
  await expectToFit(phone);
  await expectAccessible(phone);
});

test('the bell counts what is unread and leads to it', async () => {
  const { id, owner } = await makeAction('Tell the owner');
  const page = await dashboard.visit();
  const [name = '', value = ''] = owner.cookie.split('=');
  await page.context().addCookies([{ name, value, url: dashboard.address }]);
  await page.goto('/');
  await page.getByRole('link', { name: '1 unread notice' }).click();
  await page.getByRole('heading', { name: 'Notices' }).waitFor();
  await expectAccessible(page);
  await page.getByRole('link', { name: /is yours, due/ }).click();
  await page.waitForURL(`**/actions/${id}`);
  await page.getByRole('link', { name: '0 unread notices' }).waitFor();
  await page.goto('/account');
  await page.getByRole('button', { name: 'Make a calendar address' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Make a calendar address' }).click();
  const address = await page.locator('output[aria-label="Calendar address"]').textContent();
  const feed = await page.request.get(new URL(address!.trim()).pathname);
  expect(await feed.text()).toContain('BEGIN:VCALENDAR');
});
