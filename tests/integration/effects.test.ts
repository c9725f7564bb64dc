/** Effects over simulated weeks: a fix that worked and one that did not, recurrences, and the proof stated beforehand. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { addDays } from '#analysis/calendar/day.ts';
import { poissonVariate } from '#analysis/numeric/poisson-variate.ts';
import { seededRandom } from '#analysis/numeric/random.ts';
import { watchEffects } from '#api/features/actions/effects/watch.job.ts';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { addProduction, addReports, type ReportFact } from '#tests/support/facts.ts';
import * as make from '#tests/support/master-data.ts';

const url = '/api/v1/actions';
const opened = '2026-01-12';
const cleanPoint = '2026-01-19';
let it: TestApp;
let plant: { id: string };
let owner: Asker;
let second: Asker;

beforeAll(async () => {
  it = await createTestApp({ now: `${opened}T10:00:00Z` });
  plant = await make.makePlant(it.db);
  owner = await it.as('engineer', [plant.id]);
  second = await it.as('manager', [plant.id]);
});
afterAll(() => it.close());

const setDay = async (day: string) => {
  const now = new Date(`${day}T10:00:00Z`);
  it.time.now = now;
  await it.db.prisma.session.updateMany({
    data: { createdAt: now, lastSeenAt: now, expiresAt: new Date(now.getTime() + 3_600_000) },
  });
};
const watch = () => watchEffects(it.app, it.time.now);

/** A part built every day, 100,000 terminals, failing so often per million. */
async function part(
  seed: number,
  until: string,
  perMillion: (day: string) => number,
  fields: Partial<ReportFact> = {},
) {
  const housing = await make.makeHousing(it.db);
  const random = seededRandom(seed);
  const reports: ReportFact[] = [];
  for (let day = '2025-10-01'; day <= until; day = addDays(day, 1)) {
    await addProduction(it.db, [{ plantId: plant.id, day, housingId: housing.id, units: 1000n, terminals: 100_000n }]);
    const failures = poissonVariate(perMillion(day) / 10, random);
    for (let failure = 0; failure < failures; failure++)
      reports.push({
        plantId: plant.id,
        housingId: housing.id,
        foundOn: day,
        builtOn: new Date(day),
        cause: 'tooling',
        ...fields,
      });
  }
  await addReports(it.db, reports);
  return housing;
}

const plan = (housingId: string, more: object = {}) => ({
  scope: { housingId, cause: 'tooling' },
  before: { from: '2025-10-01', to: opened },
  cleanPoint,
  reduction: 0.8,
  onRecurrence: 'tell',
  ...more,
});

async function closedAction(housingId: string, more: object = {}) {
  await setDay(opened);
  const input = {
    plantId: plant.id,
    kind: 'corrective',
    title: 'New applicator',
    ownerId: owner.id,
    dueOn: cleanPoint,
  };
  const action = (await second.post(url, { ...input, effect: plan(housingId, more) })).body;
  await setDay(cleanPoint);
  await owner.post(`${url}/${action.id}/evidence`, { text: 'fitted' });
  const done = (await owner.put(`${url}/${action.id}/state`, { state: 'carried_out' }, action.version)).body;
  await second.put(`${url}/${action.id}/verification`, { passed: true, note: 'seen' }, done.version);
  return action.id as string;
}
const effectOf = async (id: string) => (await owner.get(`${url}/${id}/effect`)).body.effect;
const stateOf = async (id: string) => (await owner.get(`${url}/${id}`)).body;

/** Looks every week and returns the verdicts that were kept. */
async function weeks(id: string, count: number): Promise<string[]> {
  for (let week = 1; week <= count; week++) {
    await setDay(addDays(cleanPoint, week * 7));
    await watch();
  }
  const looks = await it.db.prisma.effectLook.findMany({ where: { actionId: id }, orderBy: { day: 'asc' } });
  return looks.map(({ verdict }) => verdict);
}

test('a fix that worked: the proof is stated beforehand, shown when it is there, and the owner is told', async () => {
  const housing = await part(11, '2026-06-01', (day) => (day < cleanPoint ? 2 : 0.1));
  const id = await closedAction(housing.id);
  const stated = (await effectOf(id)).planned;
  expect(stated).toMatchObject({ statedOn: opened, perDay: 100_000, wider: false });
  expect(stated.rateBefore.value).toBeCloseTo((stated.before.failures / stated.before.exposure) * 1e6, 8);
  expect(stated.supplyOn > cleanPoint).toBe(true);

  const verdicts = await weeks(id, 16);
  expect(verdicts[0]).toBe('not_shown_yet');
  expect(verdicts.at(-1)).toBe('held');
  const effect = await effectOf(id);
  expect(effect).toMatchObject({ verdict: 'held', frozen: true, excludedOn: null });
  expect(effect.ratio.overAllLooks.high).toBeLessThan(1);
  expect(effect.planned).toEqual(stated);
  const filter = `housing=${housing.id}&cause=tooling&plant=${plant.id}`;
  const before = await owner.get(`/api/v1/failures/count?${filter}&builtFrom=2025-10-01&builtTo=${opened}`);
  expect(before.body.reports).toBe(effect.before.failures);
  const after = await owner.get(
    `/api/v1/failures/count?${filter}&builtFrom=${cleanPoint}&to=${addDays(it.time.now.toISOString().slice(0, 10), 1)}`,
  );
  expect(after.body.reports).toBe(effect.after.failures);
  const told = await it.db.prisma.notice.findMany({ where: { personId: owner.id, kind: 'effect_verdict' } });
  expect(told).toHaveLength(1);
  const judged = (await second.get(`${url}/judged-effects?cause=tooling`)).body.items;
  expect(judged.find((one: { actionId: string }) => one.actionId === id)).toMatchObject({ verdict: 'held' });
});

test('a fix that did not: never called held, excluded at last, and opened again', async () => {
  const housing = await part(12, '2026-06-01', () => 8);
  const id = await closedAction(housing.id);
  const verdicts = await weeks(id, 16);
  expect(verdicts).not.toContain('held');
  expect(verdicts.at(-1)).toBe('did_not_hold');
  expect(await stateOf(id)).toMatchObject({ state: 'under_way', reopened: 1, verifiedBy: null });
  expect((await stateOf(id)).stateReason).toMatch(/^Judged on .* did not hold/);
  expect(await effectOf(id)).toMatchObject({ verdict: 'did_not_hold', shownOn: null });
});

test('without production nothing is said, and fewer data than planned are named', async () => {
  const housing = await make.makeHousing(it.db);
  const id = await closedAction(housing.id);
  await setDay('2026-03-01');
  expect(await effectOf(id)).toMatchObject({
    verdict: 'not_shown_yet',
    fewerThanPlanned: true,
    reason: 'no_production',
  });
});

test('a recurrence opens it again and tells the owner, once a report, however it came', async () => {
  const housing = await part(13, addDays(cleanPoint, -1), () => 3);
  const tool = await make.makeTool(it.db, plant.id);
  const wrongTool = await make.makeTool(it.db, plant.id);
  const scope = { housingId: housing.id, cause: 'tooling', toolId: tool.id };
  const id = await closedAction(housing.id, { scope, reduction: 1, onRecurrence: 'reopen' });
  await setDay('2026-03-02');
  const base: ReportFact = {
    plantId: plant.id,
    housingId: housing.id,
    foundOn: '2026-03-01',
    builtOn: new Date('2026-02-20'),
  };
  const [, , unsorted] = await addReports(it.db, [
    { ...base, cause: 'tooling', toolId: wrongTool.id },
    { ...base, cause: 'tooling', toolId: tool.id, builtOn: new Date('2026-01-10') },
    { ...base, toolId: tool.id },
  ]);
  await watch();
  expect((await stateOf(id)).state).toBe('verified');
  expect((await effectOf(id)).recurrences).toMatchObject([{ failureId: unsorted, certain: false }]);

  // the cause is edited
  await it.db.prisma.failure.updateMany({ where: { id: unsorted! }, data: { cause: 'tooling' } });
  await Promise.all([watch(), watch()]);
  expect(await stateOf(id)).toMatchObject({ state: 'under_way', reopened: 1 });
  const told = () =>
    it.db.prisma.notice.findMany({ where: { personId: owner.id, kind: 'action_recurrence', link: `/actions/${id}` } });
  expect(await told()).toHaveLength(1);
  expect((await effectOf(id)).recurrences).toMatchObject([{ certain: true, reopened: true }]);
  expect(
    await it.db.prisma.mail.count({ where: { link: `/actions/${id}`, subject: { contains: 'happened again' } } }),
  ).toBe(1);

  const again = await stateOf(id);
  const done = (await owner.put(`${url}/${id}/state`, { state: 'carried_out' }, again.version)).body;
  await second.put(`${url}/${id}/verification`, { passed: true, note: 'seen again' }, done.version);
  await watch();
  expect((await stateOf(id)).state).toBe('verified');
  // an import brings another
  await addReports(it.db, [{ ...base, cause: 'tooling', toolId: tool.id }]);
  await watch();
  expect(await stateOf(id)).toMatchObject({ state: 'under_way', reopened: 2 });
  expect(await told()).toHaveLength(2);
});

test('field faults still to come keep young builds from looking better than they are', async () => {
  const housing = await part(14, '2026-06-01', () => 0);
  const late = (built: string) => ({
    plantId: plant.id,
    housingId: housing.id,
    source: 'field' as const,
    cause: 'wire_dress' as const,
    builtOn: new Date(built),
    foundOn: addDays(built, 90),
  });
  const days = Array.from({ length: 40 }, (_, place) => addDays('2025-10-01', place * 2));
  await addReports(it.db, days.map(late));
  const scope = { housingId: housing.id, cause: 'wire_dress', sources: ['field'] };
  await setDay('2026-04-01');
  const before = { from: '2025-10-01', to: '2025-12-20' };
  const asked = { plantId: plant.id, ...plan(housing.id, { scope, before, cleanPoint: '2026-04-06' }) };
  const proof = (await owner.post(`${url}/effect-preview`, asked)).body;
  expect(proof.maturity[0]).toBeLessThan(0.1);
  expect(proof.maturity.at(-1)).toBe(1);
  expect(proof.supplyOn > '2026-07-01').toBe(true);
});

test('the plan is stated before it is carried out and stays; bad plans are refused', async () => {
  const housing = await make.makeHousing(it.db);
  const id = await closedAction(housing.id);
  const { version } = await stateOf(id);
  expect((await owner.put(`${url}/${id}/effect`, plan(housing.id), version)).status).toBe(409);
  await setDay(opened);
  const action = (
    await second.post(url, { plantId: plant.id, kind: 'corrective', title: 'x', ownerId: owner.id, dueOn: cleanPoint })
  ).body;
  const set = (body: object) => owner.put(`${url}/${action.id}/effect`, body, action.version);
  const stranger = await make.makeTool(it.db, (await make.makePlant(it.db)).id);
  expect((await set(plan(housing.id, { scope: {} }))).status).toBe(400);
  expect((await set(plan(housing.id, { reduction: 0 }))).status).toBe(400);
  expect((await set(plan(housing.id, { cleanPoint: '2025-12-01' }))).status).toBe(400);
  expect(
    (await set(plan(housing.id, { before: { from: '2026-01-01', to: '2026-02-01' }, cleanPoint: '2026-02-02' })))
      .status,
  ).toBe(422);
  expect((await set(plan(housing.id, { scope: { toolId: stranger.id } }))).status).toBe(422);
  expect((await set(plan(housing.id))).body.effect).toMatchObject({ frozen: false, verdict: 'not_shown_yet' });
});
