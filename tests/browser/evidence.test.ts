import { afterAll, beforeAll, expect, test } from 'vitest';
import * as make from '#tests/support/master-data.ts';
import { reportBody } from '#tests/support/reports.ts';
import { type Dashboard, openDashboard } from './support/dashboard.ts';
import { expectAccessible, expectToFit } from './support/expectations.ts';

let dashboard: Dashboard;
let plant: { id: string };
let reports: { id: string; number: string }[];

beforeAll(async () => {
  dashboard = await openDashboard();
  const { it } = dashboard;
  plant = await make.makePlant(it.db, { code: 'LIS', name: 'Lisbon works' });
  await make.makeStages(it.db, plant.id);
  const housing = await make.makeHousing(it.db, { code: 'HX-07', name: 'Door' });
  const tool = await make.makeTool(it.db, plant.id);
  const inspector = await it.as('inspector');
  const record = async () =>
    (
      await inspector.post(
        '/api/v1/failures',
        reportBody(plant.id, { foundOn: '2026-06-10', housingId: housing.id, toolIds: [tool.id], reelLot: 'R-77' }),
      )
    ).body;
  reports = [await record(), await record(), await record(), await record()];
  for (const { id } of reports)
    await inspector.put(
      `/api/v1/failures/${id}/evidence`,
      { findings: [{ code: 'crimp_height_out', answer: 'yes' }] },
      1,
    );
});
afterAll(() => dashboard.close());

const address = (place: number, more = '') => `/failures/${reports[place]!.id}${more}`;

test('an inspector answers on a tablet, and the suggestion moves', async () => {
  const page = await dashboard.signIn('inspector', { width: 820 });
  await page.goto(address(3));
  const panel = page.getByRole('region', { name: 'Evidence' });
  await panel.getByRole('heading', { name: /^(Next best check|Still open)/ }).waitFor();
  await panel.getByText('On the terminal', { exact: true }).click();
  const onTerminal = panel.locator('details').filter({ hasText: 'On the terminal' }).first();
  const probe = onTerminal.getByRole('group', { name: 'Answer to: Probe mark' });
  const box = await probe.getByRole('button', { name: 'Yes' }).boundingBox();
  expect(box!.height).toBeGreaterThanOrEqual(48);
  await probe.getByRole('button', { name: 'Yes' }).click();
  await panel.getByText('Probe mark: Yes').waitFor();
  await onTerminal
    .getByRole('group', { name: 'Answer to: Contact opened or pushed' })
    .getByRole('button', { name: 'Yes' })
    .press('Enter');
  await panel.getByText('Contact opened or pushed: Yes').waitFor();
  expect(await panel.getByRole('status').allTextContents()).toContainEqual(
    expect.stringMatching(/^Most probable now: (Tooling|Test-probe damage), \d/),
  );
  await probe.getByRole('button', { name: 'Take back: Probe mark' }).click();
  await panel.getByText('Probe mark: Yes').waitFor({ state: 'detached' });

  await panel.getByText('By a test', { exact: true }).click();
  const force = panel.locator('details').getByRole('listitem').filter({ hasText: 'Retention force below its minimum' });
  await force.getByLabel('Measured value').fill('5');
  await force.getByLabel('Limit (drawing)').fill('10');
  await force.getByRole('combobox', { name: 'Unit' }).click();
  await page.getByRole('option', { name: 'lbf' }).click();
  await force.getByRole('button', { name: 'Take the measurement' }).click();
  await force.getByText('22.24 N against 44.48 N').waitFor();
  expect(await panel.getByRole('button', { name: /^Confirm/ }).count()).toBe(0);
  await expectAccessible(page);
  await expectToFit(page);
});

test('an engineer overrides with a reason and confirms reports alike together', async () => {
  const page = await dashboard.signIn('engineer', { width: 820 });
  await page.goto(address(0));
  const panel = page.getByRole('region', { name: 'Evidence' });
  await panel.getByText('a person confirms it').waitFor();
  await panel.getByRole('button', { name: 'Decide otherwise' }).click();
  await panel.getByRole('combobox', { name: 'Cause' }).click();
  await page.getByRole('option', { name: 'Handling', exact: true }).click();
  await panel.getByRole('button', { name: 'Confirm', exact: true }).click();
  await panel.getByText('Say why you decide otherwise.').first().waitFor();
  await panel.getByRole('textbox', { name: 'Reason' }).fill('reel found crushed');
  await panel.getByText('2 unsorted reports share').waitFor();
  await panel.getByRole('checkbox', { name: 'All of them' }).check();
  await panel.getByRole('button', { name: 'Confirm 3 reports' }).click();
  await panel.getByText('Handling: decided by').waitFor();
  await panel.getByText('Reason: reel found crushed').waitFor();
  await panel.getByText('The suggestion then was Tooling').waitFor();
  const decided = await dashboard.it.db.prisma.confirmation.findMany();
  expect(decided.map(({ failureId }) => failureId).sort()).toEqual(
    reports
      .slice(0, 3)
      .map(({ id }) => id)
      .sort(),
  );
  await expectAccessible(page);
});

test('the checklist names its report and draws every check', async () => {
  const page = await dashboard.signIn('viewer', { width: 390 });
  await page.goto(address(3, '/checklist'));
  await page.getByText('To take').waitFor();
  const drawings = await page.getByRole('img').count();
  expect(drawings).toBeGreaterThan(25);
  await page.getByText(reports[3]!.number).first().waitFor();
  await page.getByText('R-77').waitFor();
  await expectToFit(page);
  await expectAccessible(page);
  await page.emulateMedia({ media: 'print' });
  expect(await page.getByRole('button', { name: 'Print' }).isVisible()).toBe(false);
});

test('a second opinion is asked for, given blind, and measured', async () => {
  const engineer = await dashboard.signIn('engineer');
  await engineer.goto('/evidence/opinions');
  await engineer.getByText('None waits for you').waitFor();
  await engineer.getByRole('combobox', { name: 'Plants' }).focus();
  await engineer.keyboard.press('ArrowDown');
  await engineer.getByRole('option', { name: 'LIS' }).click();
  await engineer.getByRole('button', { name: 'Draw and ask' }).click();
  await engineer.getByText('3 reports were drawn.').waitFor();
  await expectAccessible(engineer);
  await engineer.getByRole('button', { name: 'Take it upon me' }).first().click();
  await engineer.getByText('not shown on purpose').waitFor();
  expect(await engineer.getByText('reel found crushed').count()).toBe(0);
  await engineer.getByRole('radio', { name: 'Tooling' }).check();
  await expectAccessible(engineer);
  await engineer.getByRole('button', { name: 'Give this opinion' }).click();
  await engineer.getByRole('heading', { name: 'Second opinions', level: 1 }).waitFor();
  await expect.poll(() => engineer.getByRole('button', { name: 'Take it upon me' }).count()).toBe(2);
});

test('the record says in so many words that it is not better, opens its numbers, and mutes the suggestion', async () => {
  const { db } = dashboard.it;
  const [sample] = await db.prisma.confirmation.findMany({ take: 1 });
  const { id: _id, failureId: _failure, ...rest } = sample!;
  await db.prisma.confirmation.createMany({
    data: Array.from({ length: 60 }, () => ({
      ...rest,
      answers: {},
      id: crypto.randomUUID(),
      failureId: crypto.randomUUID(),
      cause: 'handling' as const,
      suggested: 'tooling' as const,
      frequent: 'handling' as const,
    })),
  });
  const page = await dashboard.signIn('viewer', { width: 1440 });
  await page.goto('/evidence/record');
  await page.getByText('It is not better than always naming the most frequent cause').waitFor();
  await page.getByRole('img', { name: /^Share that came true/ }).waitFor();
  await page.getByRole('button', { name: 'Suggested Tooling, confirmed Handling: 63' }).click();
  await page.getByRole('link', { name: reports[0]!.number }).waitFor();
  await expectAccessible(page);
  await page.goto(address(3));
  await page.getByText('Shown muted').waitFor();

  const phone = await dashboard.signIn('viewer', { width: 390, locale: 'de' });
  await phone.goto('/evidence/record');
  await phone.getByText('Deshalb wird er auf jeder Meldung gedämpft gezeigt').waitFor();
  await expectToFit(phone);
  await expectAccessible(phone);
});
