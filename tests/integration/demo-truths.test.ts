/** What seed/README.md says was planted, recovered through the analyses. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { rateRatio } from '#analysis/rates/rate-ratio.ts';
import { queryRows, sql } from '#db/sql.ts';
import { bulkBoxes } from '#seed/scenario/bulk-boxes.ts';
import { gluedRework } from '#seed/scenario/glued-rework.ts';
import { lowLances } from '#seed/scenario/low-lances.ts';
import { noStrainRelief } from '#seed/scenario/no-strain-relief.ts';
import { oversizeProbe } from '#seed/scenario/oversize-probe.ts';
import { productionGaps } from '#seed/scenario/production-gaps.ts';
import { pullCheck } from '#seed/scenario/pull-check.ts';
import { wornApplicator } from '#seed/scenario/worn-applicator.ts';
import { createDemoApp, type Demo, daysBefore } from '#tests/support/demo.ts';

let demo: Demo;
beforeAll(async () => {
  demo = await createDemoApp();
}, 240_000);
afterAll(() => demo.close());

type Query = Record<string, string | number>;
const between = (from: number, to: number) => ({ from: daysBefore(from), to: daysBefore(to) });
const ofPlant = (code: string): Query => ({ plant: demo.id(`plant ${code}`) });
const ofLine = (plant: string, line: string): Query => ({ ...ofPlant(plant), line: demo.id(`line ${plant} ${line}`) });
const topBar = async (dimension: string, query: Query) =>
  (await demo.ask('analyses/pareto', { dimension, top: 1, compare: 'none', ...query })).bars[0];

/** Independent reports and terminals inserted, as the rates give them. */
async function counted(query: Query) {
  const { overall } = await demo.ask('analyses/rates', query);
  return { failures: overall.reports, exposure: overall.exposureTerminals };
}

describe('a worn applicator', () => {
  const { plant, line, tool, successor, wears, replaced } = wornApplicator;
  const late = between(replaced + 56, replaced);

  test('puts tooling first on its line, and itself first among the tools', async () => {
    const cause = await topBar('cause', { ...ofLine(plant, line), ...late });
    expect(cause).toMatchObject({ key: 'tooling', topProbability: expect.closeTo(1, 1) });
    const bar = await topBar('tool', { ...ofPlant(plant), cause: 'tooling', ...late });
    expect(bar).toMatchObject({ key: demo.id(`tool ${plant} ${tool}`), topProbability: expect.closeTo(1, 1) });
  });
  test('gets worse until it is replaced, and its successor does not', async () => {
    const at = { ...ofLine(plant, line), cause: 'tooling', subCause: 'worn_applicator' };
    const early = await counted({ ...at, ...between(wears, wears - 42) });
    const end = await counted({ ...at, ...between(replaced + 42, replaced) });
    expect(rateRatio(end, early).interval!.low).toBeGreaterThan(2);
    const after = await counted({ ...at, ...between(replaced - 7, replaced - 98) });
    expect(rateRatio(after, end).interval!.high).toBeLessThan(0.1);
    const { total } = await demo.ask('analyses/pareto', {
      tool: demo.id(`tool ${plant} ${successor}`),
      ...between(replaced, 0),
    });
    expect(total.reports).toBeGreaterThan(0);
  });
});

describe('an oversize probe', () => {
  const { plant, fixture, position, fitted, changed } = oversizeProbe;
  const query = () => ({
    tool: demo.id(`tool ${plant} ${fixture}`),
    cause: 'probe_damage',
    ...between(fitted, changed),
  });

  test('its fixture stands first among the tools of probe damage', async () => {
    const bar = await topBar('tool', { ...ofPlant(plant), cause: 'probe_damage', ...between(fitted, changed) });
    expect(bar.key).toBe(query().tool);
    expect(bar.topProbability).toBeGreaterThan(0.99);
  });
  test('nothing fails before the test that made it', async () => {
    const { cells } = await demo.ask('analyses/escapes', query());
    const found = new Set(cells.map((cell: { found: string }) => cell.found));
    expect([...found].sort()).toEqual(['field', 'product_test', 'warehouse']);
    expect(cells.every((cell: { origin: string }) => cell.origin === 'electrical_test')).toBe(true);
  });
  test('nearly all at one position of the fixture', async () => {
    const rows = await queryRows(
      demo.db.pool,
      sql`select f.fixture_position as position, count(*) as reports from failure f
        where f.tool_id = ${query().tool}::uuid and f.cause = 'probe_damage' and f.fixture_position is not null
          and f.built_on >= ${query().from} and f.built_on < ${query().to} group by 1 order by 2 desc`,
      z.object({ position: z.string(), reports: z.int() }),
    );
    expect(rows[0]!.position).toBe(position);
    expect(rows[0]!.reports).toBeGreaterThan(0.85 * rows.reduce((sum, row) => sum + row.reports, 0));
  });
});

describe('a drawing without strain relief', () => {
  const { plant, line, housing, customer, outerRows, tieMoved } = noStrainRelief;
  const place = () => ({ ...ofLine(plant, line), housing: demo.id(`housing ${housing}`) });

  test('wire dress leads there, in the outer rows only', async () => {
    const bar = await topBar('cause', place());
    expect(bar).toMatchObject({ key: 'wire_dress' });
    expect(bar.topProbability).toBeGreaterThan(0.99);
    const { bars } = await demo.ask('analyses/pareto', {
      dimension: 'cavity',
      bars: 40,
      subCause: 'no_strain_relief',
      ...place(),
      ...between(540, -1),
    });
    const inCavities = bars.filter(({ key }: { key: string }) => /^[A-H]\d+$/.test(key));
    expect(inCavities.length).toBeGreaterThan(10);
    for (const { key } of inCavities) expect(outerRows).toContain(key[0]);
  });
  test('most are found outside, and one customer sees nearly all of the plant’s', async () => {
    const { cells, total } = await demo.ask('analyses/escapes', {
      ...place(),
      subCause: 'no_strain_relief',
      ...between(540, -1),
    });
    const outside = cells.find(({ found }: { found: string }) => found === 'field').reports;
    expect(outside).toBeGreaterThan(0.5 * total.reports);
    const bar = await topBar('customer', {
      ...ofPlant(plant),
      cause: 'wire_dress',
      found: 'field',
      ...between(540, -1),
    });
    expect(bar.key).toBe(demo.id(`customer ${customer}`));
    expect(bar.topProbability).toBeGreaterThan(0.99);
  });
  test('moving the tie did not work: the rate before and after may be the same', async () => {
    const at = { ...place(), cause: 'wire_dress' };
    const { interval } = rateRatio(
      await counted({ ...at, ...between(tieMoved, 0) }),
      await counted({ ...at, ...between(2 * tieMoved, tieMoved) }),
    );
    expect(interval!.low).toBeLessThan(1);
    expect(interval!.high).toBeGreaterThan(1);
  });
});

describe('a glued rework batch', () => {
  const { plant, line, began, days } = gluedRework;
  test('adhesive is a matter of one line, and of units built in those days', async () => {
    const bar = await topBar('line', { ...ofPlant(plant), cause: 'adhesive', ...between(540, -1) });
    expect(bar.key).toBe(demo.id(`line ${plant} ${line}`));
    expect(bar.topProbability).toBeGreaterThan(0.99);
    const [row] = await queryRows(
      demo.db.pool,
      sql`select count(*) filter (where f.built_on >= ${daysBefore(began)} and f.built_on < ${daysBefore(began - days)}) as batch,
          count(*) as reports, max(f.found_on - f.built_on) filter (where f.source = 'field') as longest
        from failure f where f.line_id = ${demo.id(`line ${plant} ${line}`)}::uuid and f.sub_cause = 'glue_in_rework'
          and f.built_on is not null`,
      z.object({ batch: z.int(), reports: z.int(), longest: z.int() }),
    );
    expect(row!.batch).toBeGreaterThan(0.9 * row!.reports);
    expect(row!.longest).toBeGreaterThan(120);
  });
});

describe('a lot with low lances', () => {
  test('stands first among the lots, and shows at two plants', async () => {
    const first = Math.max(...lowLances.uses.map(({ from }) => from));
    const period = between(first, 30);
    const bar = await topBar('lot', {
      cause: 'component',
      terminal: demo.id(`terminal ${lowLances.terminal}`),
      ...period,
    });
    expect(bar.key).toBe(lowLances.lot);
    expect(bar.topProbability).toBeGreaterThan(0.99);
    const { bars } = await demo.ask('analyses/pareto', {
      dimension: 'plant',
      lot: lowLances.lot,
      cause: 'component',
      ...period,
    });
    const plants = bars.map(({ label }: { label: string }) => label.split(' ')[0]);
    expect(plants.sort()).toEqual(['POZ', 'QRO']);
    for (const { reports } of bars) expect(reports).toBeGreaterThan(20);
  });
});

test('the pull check worked: partial seats fell to well under two thirds', async () => {
  const { plant, line, introduced } = pullCheck;
  const at = { ...ofLine(plant, line), cause: 'partial_seat' };
  const ratio = rateRatio(
    await counted({ ...at, ...between(introduced, 0) }),
    await counted({ ...at, ...between(2 * introduced, introduced) }),
  );
  expect(ratio.interval!.high).toBeLessThan(0.67);
});

test('in the last full week handling rose at one plant beyond noise', async () => {
  const { plant, line } = bulkBoxes;
  const week = await demo.ask('week', ofPlant(plant));
  expect(week.period).toEqual(between(6, -1));
  expect(week.headlines.find(({ key }: { key: string }) => key === 'reports').change.verdict).toBe('up');
  expect(week.topCauses[0]).toMatchObject({ cause: 'handling', change: { verdict: 'up' } });
  const bar = await topBar('line', { ...ofPlant(plant), cause: 'handling', ...between(6, -1) });
  expect(bar.key).toBe(demo.id(`line ${plant} ${line}`));
  expect(bar.topProbability).toBeGreaterThan(0.99);
});

test('where production was not reported the rate says so', async () => {
  for (const { plant, line, from, to } of productionGaps) {
    const { overall } = await demo.ask('analyses/rates', { ...ofLine(plant, line), ...between(from, to - 1) });
    expect(overall.reports).toBeGreaterThan(5);
    expect(overall.dpmo).toMatchObject({ value: null, reason: 'no_production' });
  }
});

test('over the group the Pareto is steep, and its first causes are sure of their place', async () => {
  const { bars } = await demo.ask('analyses/pareto', { dimension: 'cause', top: 3, ...between(364, -1) });
  expect(bars.slice(0, 3).map(({ key }: { key: string }) => key)).toEqual(['partial_seat', 'tooling', 'handling']);
  for (const bar of bars.slice(0, 3)) expect(bar.topProbability).toBeGreaterThan(0.99);
  expect(bars[2].cumulativeShare).toBeGreaterThan(0.55);
  const { overall } = await demo.ask('analyses/rates', between(364, -1));
  expect(overall.dpmo.value).toBeGreaterThan(50);
  expect(overall.dpmo.value).toBeLessThan(500);
});
