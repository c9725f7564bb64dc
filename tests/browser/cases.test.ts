import { afterAll, beforeAll, expect, test } from 'vitest';
import { addVerifiedAction, fullContent, openCase, saveParts } from '#tests/support/cases.ts';
import { addReports } from '#tests/support/facts.ts';
import * as make from '#tests/support/master-data.ts';
import { type Dashboard, openDashboard } from './support/dashboard.ts';
import { expectAccessible, expectToFit } from './support/expectations.ts';

let dashboard: Dashboard;
let plantId: string;
let otherId: string;
let caseId: string;

beforeAll(async () => {
  dashboard = await openDashboard();
  const { it } = dashboard;
  plantId = (await make.makePlant(it.db, { code: 'LIS', name: 'Lisbon works' })).id;
  otherId = (await make.makePlant(it.db, { code: 'OPO', name: 'Porto works' })).id;
  await make.makeTool(it.db, otherId, { type: 'AP-150' });
  const manager = await it.as('manager', [plantId]);
  const [failureId = ''] = await addReports(it.db, [{ plantId, foundOn: '2026-05-02', number: 'LIS-26-00007' }]);
  const opened = await openCase(manager, plantId, { reportIds: [failureId], title: 'Terminals back out of HX-13' });
  caseId = opened.id;
  await addVerifiedAction(it, plantId, caseId, manager.id);
  await saveParts(manager, caseId, { ...fullContent(failureId), closure: { summary: '', thanks: '' } });
});
afterAll(() => dashboard.close());

test('a case is opened, a part is written, signed and locked', async () => {
  const page = await dashboard.signIn('manager', { plants: [plantId] });
  await page.goto('/cases');
  await page.getByRole('button', { name: 'Open a case' }).click();
  await page.getByRole('textbox', { name: 'Title', exact: true }).fill('Terminal loose in cavity A1');
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.getByRole('heading', { name: /LIS-8D-26-002 Terminal loose/ }).waitFor();
  await page.getByText('the emergency response').waitFor();
  await page.getByRole('textbox', { name: 'Symptom' }).fill('Loose at the product test');
  await page.getByRole('textbox', { name: 'Emergency response' }).fill('Shipments stopped');
  await page.getByRole('button', { name: 'Save: Plan and emergency response' }).click();
  await page.getByRole('button', { name: 'Sign D0 for Quality' }).click();
  await page.getByText('Signed parts are locked.').waitFor();
  expect(await page.getByRole('textbox', { name: 'Symptom' }).isDisabled()).toBe(true);
  await expectAccessible(page);
});

test('two people’s changes of one part are joined', async () => {
  const [first, second] = [
    await dashboard.signIn('engineer', { plants: [plantId] }),
    await dashboard.signIn('engineer', { plants: [plantId] }),
  ];
  for (const page of [first, second]) {
    await page.goto(`/cases/${caseId}?d=3`);
    await page.getByRole('textbox', { name: 'Containment', exact: true }).waitFor();
  }
  for (const [page, field, text] of [
    [first, 'Containment', 'Stock sorted twice'],
    [second, 'Verification', 'Nothing found in 900'],
  ] as const) {
    const form = page.getByRole('form', { name: 'Interim containment' });
    await form.getByRole('textbox', { name: field, exact: true }).fill(text);
    await form.getByRole('button', { name: 'Save: Interim containment' }).click();
    if (page === first) await form.getByText('Last saved by Test engineer').waitFor();
  }
  const form = second.getByRole('form', { name: 'Interim containment' });
  await form.getByText('Both changes are here now').waitFor();
  expect(await form.getByRole('textbox', { name: 'Containment', exact: true }).inputValue()).toBe('Stock sorted twice');
  await form.getByRole('button', { name: 'Save: Interim containment' }).click();
  await form.getByText('Both changes are here now').waitFor({ state: 'detached' });
});

test('the case is signed to its closure, asks the other plant, and that plant answers', async () => {
  const page = await dashboard.signIn('manager', { plants: [plantId] });
  for (const discipline of [0, 1, 2, 3, 4, 5, 6, 7]) {
    await page.goto(`/cases/${caseId}?d=${discipline}`);
    await page.getByRole('button', { name: `Sign D${discipline} for Quality` }).click();
    await page.getByText('Signed parts are locked.').filter({ visible: true }).waitFor();
    if (discipline === 4) await expectAccessible(page);
  }
  await page.goto(`/cases/${caseId}?d=8`);
  await page.getByRole('textbox', { name: 'Result' }).fill('No back-out since the correction');
  await page.getByRole('button', { name: 'Save: Closure' }).click();
  await page.getByRole('button', { name: 'Sign D8 for Quality' }).click();
  await page.getByRole('button', { name: 'Sign D8 for Plant management' }).click();
  await page.getByText(/LIS, closed/).waitFor();
  await page.goto(`/cases/${caseId}?d=9`);
  await page.getByRole('textbox', { name: 'Sent to' }).fill('quality@customer.invalid');
  await page.getByRole('button', { name: 'Keep PDF as sent' }).click();
  await page.getByText(/1\. PDF to quality@customer.invalid/).waitFor();
  await expectAccessible(page);

  const other = await dashboard.signIn('engineer', { plants: [otherId] });
  await other.goto('/lessons');
  const asked = other.getByRole('article', { name: 'Worn applicator flattens lances' });
  await asked.getByRole('radio', { name: 'Does not apply' }).check();
  await asked.getByRole('textbox', { name: 'Why it does not apply' }).fill('All applicators are new');
  await asked.getByRole('button', { name: 'Answer' }).click();
  await asked.getByText('All applicators are new').waitFor();
  await expectAccessible(other);
});

test.each([390, 820, 1440])('the pages fit %i px, in German', async (width) => {
  const page = await dashboard.signIn('manager', { plants: [plantId], locale: 'de', width });
  for (const address of [
    '/cases',
    `/cases/${caseId}?d=2`,
    `/cases/${caseId}?d=4`,
    `/cases/${caseId}?d=9`,
    '/lessons',
  ]) {
    await page.goto(address);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.waitForLoadState('networkidle');
    await expectToFit(page);
  }
});
