import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { movedBeyondNoise } from '#api/features/charts/moved.service.ts';
import { findPlantSignals } from '#api/features/signals/signals.service.ts';
import { signalSentence } from '#contracts/signal-words.ts';
import type { Signal, SignalFound } from '#contracts/signals.ts';
import { bulkBoxes } from '#seed/scenario/bulk-boxes.ts';
import { lowLances } from '#seed/scenario/low-lances.ts';
import { oversizeProbe } from '#seed/scenario/oversize-probe.ts';
import { wornApplicator } from '#seed/scenario/worn-applicator.ts';
import type { Asker } from '#tests/support/app.ts';
import { createDemoApp, type Demo, daysBefore, now } from '#tests/support/demo.ts';

let demo: Demo;
let engineer: Asker;
beforeAll(async () => {
  demo = await createDemoApp();
  engineer = await demo.as('engineer');
}, 240_000);
afterAll(() => demo.close());

type Query = Record<string, string | number>;
const between = (from: number, to: number) => ({ from: daysBefore(from), to: daysBefore(to) });
const plantOf = (code: string) => ({ plant: demo.id(`plant ${code}`) });
const find = (query: Query) => demo.ask('analyses/signals', query);
const named = (signals: SignalFound[], names: object) =>
  signals.find((signal) => Object.entries(names).every(([part, name]) => signal.names[part as 'tool'] === name));

/** Reports behind a signal, as its link opens them. */
async function opened({ opens }: SignalFound, query: Query) {
  const address = new URLSearchParams(Object.entries(query).map(([field, value]) => [field, String(value)]));
  for (const [field, values] of Object.entries(opens)) {
    address.delete(field);
    for (const value of values) address.append(field, value);
  }
  const { body } = await demo.viewer.get(`/api/v1/failures/count?${address}`);
  return body.reports;
}

describe('planted truths', () => {
  test('the worn applicator, dated to the weeks in which it wore', async () => {
    const { plant, tool, wears, replaced } = wornApplicator;
    const { signals } = await find({ ...plantOf(plant), ...between(replaced + 91, replaced) });
    const signal = named(signals, { tool }) as Signal;
    expect(signal).toMatchObject({ kind: 'tool', basis: 'share' });
    expect(signal.interval.low).toBeGreaterThan(2);
    expect(signal.since.day! > daysBefore(wears) && signal.since.day! < daysBefore(replaced)).toBe(true);
    expect(signal.since.reason === null && signal.since.low <= signal.since.day).toBe(true);
  });

  test('the oversize probe at its one position, first of all', async () => {
    const { plant, fixture, position, fitted, changed } = oversizeProbe;
    const query = { ...plantOf(plant), ...between(fitted, changed) };
    const { signals } = await find(query);
    expect(signals[0].names).toMatchObject({ tool: fixture, fixturePosition: position });
    expect(await opened(signals[0], query)).toBe(signals[0].observed);
    expect(signalSentence(signals[0], 'en')).toMatch(
      /^Position C4 of fixture TF-2 at SUZ: \d+ reports where 14 were to be expected/,
    );
    expect(signalSentence(signals[0], 'de')).toMatch(/^Platz C4 der Prüfaufnahme TF-2 in SUZ: \d+ Meldungen/);
  });

  test('the lot with low lances, over two plants', async () => {
    const query = between(130, 60);
    const { signals } = await find(query);
    expect(signals[0]).toMatchObject({ kind: 'lot', plantId: null, names: { lot: lowLances.lot } });
    expect(await opened(signals[0], query)).toBe(signals[0].observed);
  });

  test('the outer cavities of the harness without strain relief', async () => {
    const { signals } = await find(between(91, 0));
    expect(named(signals, { housing: 'HX-13', cavity: 'A1' })).toBeDefined();
  });

  test('two lots of the glued fortnight, though nobody names the glue', async () => {
    const { signals } = await find({ ...plantOf('TOL'), ...between(262, 171) });
    expect(signals.length).toBeGreaterThan(0);
    expect(signals.length).toBeLessThan(5);
  });

  test('the part in the bulk boxes of the last week', async () => {
    const { signals } = await find({ ...plantOf(bulkBoxes.plant), ...between(13, 0) });
    expect(signals[0].names.housing).toBe('HX-05');
  });

  test('a short list: nothing at a plant in a quarter without a fault beyond the usual', async () => {
    const { signals, tested } = await find({ ...plantOf('QRO'), ...between(300, 209) });
    expect(tested).toBeGreaterThan(300);
    expect(signals.length).toBeLessThanOrEqual(2);
  });
});

describe('not news', () => {
  const query = () => ({ ...plantOf(oversizeProbe.plant), ...between(oversizeProbe.fitted, oversizeProbe.changed) });
  const address = (more: Query = {}) => new URLSearchParams({ ...query(), ...more } as Record<string, string>);
  const silence = (who: Asker, body: object, more?: Query) =>
    who.post(`/api/v1/signals/silences?${address(more)}`, body);

  test('is hidden with a reason until a day, is audited, and can be made news again', async () => {
    const [first] = (await find(query())).signals;
    const { status, body } = await silence(engineer, {
      key: first.key,
      reason: 'Probe replaced on day 125',
      until: '2026-07-15',
    });
    expect(status).toBe(201);
    expect(body).toMatchObject({
      key: first.key,
      observed: first.observed,
      label: 'Position C4 of fixture TF-2 at SUZ',
    });
    const after = await find(query());
    expect(named(after.signals, { fixturePosition: 'C4' })).toBeUndefined();
    expect(after.silenced).toMatchObject([{ silence: { id: body.id }, signal: { key: first.key } }]);
    const { rows } = await demo.db.pool.query(`select action, plant_id from audit_entry where entity = 'signal'`);
    expect(rows).toEqual([{ action: 'silenced', plant_id: demo.id('plant SUZ') }]);
    const end = (version: number) =>
      engineer.post(`/api/v1/signals/silences/${body.id}/end`, {}, { headers: { 'if-match': `"${version}"` } });
    expect((await end(7)).status).toBe(412);
    expect((await end(body.version)).status).toBe(200);
    expect(named((await find(query())).signals, { fixturePosition: 'C4' })).toBeDefined();
  });

  test('comes back when it has grown beyond what it was', async () => {
    const [first] = (await find(query())).signals;
    const body = { key: first.key, reason: 'Known since the audit', until: '2026-07-15' };
    expect((await silence(engineer, body)).status).toBe(201);
    await demo.db.pool.query('update signal_silence set ratio = 3 where ended_at is null');
    const { signals } = await find(query());
    expect(named(signals, { fixturePosition: 'C4' })).toMatchObject({ back: true });
  });

  test('refuses what is no signal, a day past or far off, and plants that are not one’s own', async () => {
    expect((await silence(engineer, { key: 'tool|x|y', reason: 'why not', until: '2026-07-15' })).status).toBe(409);
    const [first] = (await find(query())).signals;
    expect((await silence(engineer, { key: first.key, reason: 'why not', until: '2026-06-15' })).status).toBe(422);
    expect((await silence(engineer, { key: first.key, reason: 'why not', until: '2028-06-15' })).status).toBe(422);
    const other = await demo.as('engineer', [demo.id('plant LEJ')]);
    expect((await silence(other, { key: first.key, reason: 'why not', until: '2026-07-15' })).status).toBe(404);
    expect((await silence(demo.viewer, { key: first.key, reason: 'why not', until: '2026-07-15' })).status).toBe(403);
  });
});

test('what the weekly review asks: signals of a plant, and causes that moved in its last week', async () => {
  const actor = {
    id: '0',
    kind: 'person',
    name: 'review',
    locale: 'en',
    mustChangePassword: false,
    grants: [{ role: 'viewer', plantId: null }],
  } as never;
  const at = new Date(now);
  const question = { plant: [demo.id('plant QRO')], ...between(13, 0) };
  expect((await findPlantSignals(demo.db, actor, question, at)).signals[0]!.names.housing).toBe('HX-05');
  const moved = await movedBeyondNoise(demo.db, actor, { plant: question.plant, to: daysBefore(-1) }, at);
  expect(moved[0]).toMatchObject({
    plantCode: 'QRO',
    cause: 'handling',
    worse: true,
    rules: expect.arrayContaining(['sudden_jump']),
  });
});
