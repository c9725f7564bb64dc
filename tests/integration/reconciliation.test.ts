/** Whatever is in the database: the list, the Pareto, rates, escapes, costs and the week count the same, and every link opens what it counted. */
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  type Costs,
  type Counts,
  type Escapes,
  measures,
  type Pareto,
  type Rates,
  type Week,
} from '#contracts/analyses.ts';
import { type Dimension, dimensions } from '#contracts/shared/dimension.ts';
import { causes, dispositions, sources, stageOf, stages } from '#contracts/taxonomy.ts';
import { execute, sql } from '#db/sql.ts';
import { type Asker, createTestApp, type TestApp } from '#tests/support/app.ts';
import { dayAfter, makeWorld, marks, productionFacts, reportFact, type World } from '#tests/support/arbitrary-facts.ts';
import { addProduction, addReports, type ProductionFact, type ReportFact } from '#tests/support/facts.ts';

let it: TestApp;
let world: World;
let viewer: Asker;

beforeAll(async () => {
  it = await createTestApp({ now: '2026-03-20T10:00:00Z' });
  world = await makeWorld(it.db);
  viewer = await it.as('viewer');
});
afterAll(() => it.close());

type Fields = Record<string, string | string[] | undefined>;
const queryOf = (fields: Fields) => {
  const query = new URLSearchParams();
  for (const [key, value] of Object.entries(fields))
    for (const part of [value].flat()) if (part !== undefined) query.append(key, part);
  return query.toString();
};
async function get<Body>(path: string, fields: Fields | string): Promise<Body> {
  const { status, body } = await viewer.get(`/api/v1/${path}?${typeof fields === 'string' ? fields : queryOf(fields)}`);
  expect(status, `${path} ${JSON.stringify(fields)} ${JSON.stringify(body)}`).toBe(200);
  return body;
}
const count = (fields: Fields | string) => get<{ reports: number; terminals: number }>('failures/count', fields);

const money = ({ bookedMinor, estimateMinor }: Counts) => ({ bookedMinor, estimateMinor });
const summed = (parts: readonly Counts[]): Counts => ({
  reports: parts.reduce((sum, part) => sum + part.reports, 0),
  terminals: parts.reduce((sum, part) => sum + part.terminals, 0),
  bookedMinor: parts.reduce((sum, part) => sum + part.bookedMinor, 0),
  estimateMinor: parts.reduce((sum, part) => sum + part.estimateMinor, 0),
});
const countsOf = ({ reports, terminals, bookedMinor, estimateMinor }: Counts): Counts => ({
  reports,
  terminals,
  bookedMinor,
  estimateMinor,
});

async function store(reports: readonly ReportFact[], production: readonly ProductionFact[]) {
  await execute(it.db.pool, sql`truncate failure, cost_item, production cascade`);
  await addReports(it.db, reports);
  await addProduction(it.db, production);
}

const columns: Record<string, (fact: ReportFact) => string | number | null | undefined> = {
  plant: (fact) => fact.plantId,
  line: (fact) => fact.lineId,
  tool: (fact) => fact.toolId,
  housing: (fact) => fact.housingId,
  terminal: (fact) => fact.terminalId,
  customer: (fact) => fact.customerId,
  station: (fact) => fact.station,
  lot: (fact) => fact.reelLot,
  cause: (fact) => fact.cause,
  origin: (fact) => fact.origin && stageOf(fact.origin),
  found: (fact) => stageOf(fact.found ?? 0),
  source: (fact) => fact.source,
  disposition: (fact) => fact.disposition,
};
/** What the filter selects of the generated reports, worked out without the database. */
function selected(reports: readonly ReportFact[], filter: Fields) {
  const chosen = reports.filter(
    (fact) =>
      !fact.voidedAt &&
      fact.foundOn >= String(filter.from) &&
      fact.foundOn < String(filter.to) &&
      Object.entries(columns).every(
        ([field, value]) => filter[field] === undefined || filter[field].includes(String(value(fact) ?? 'none')),
      ),
  );
  return { reports: chosen.length, terminals: chosen.reduce((sum, fact) => sum + (fact.quantityFound ?? 1), 0) };
}

const some = <Value extends string>(values: readonly Value[]) =>
  fc.option(fc.subarray([...values], { minLength: 1, maxLength: Math.min(4, values.length) }), {
    nil: undefined,
    freq: 1,
  });
const orNone = <Value extends string>(values: readonly Value[]) => some<Value | 'none'>([...values, 'none']);
const flag = fc.option(fc.constantFrom('true', 'false'), { nil: undefined });

/** Three fields at most, so that something is usually left. */
const filters = fc
  .constant(null)
  .chain(() =>
    fc.record({
      plant: some(world.plants.map(({ id }) => id)),
      line: orNone(world.plants.flatMap(({ lines }) => lines)),
      tool: orNone(world.plants.flatMap(({ tools }) => tools)),
      housing: orNone(world.housings),
      terminal: orNone(world.terminals),
      customer: orNone(world.customers),
      station: orNone(marks),
      lot: orNone(marks),
      cavity: orNone(['A1', 'several']),
      cause: orNone(causes),
      origin: orNone(stages),
      found: some(stages),
      source: some(sources),
      disposition: some(dispositions),
      cost: fc.constantFrom('booked', 'estimated', 'none', undefined),
      gates: fc.constantFrom('0', '2', undefined),
      safety: flag,
      evidence: flag,
      avoidable: flag,
      built: flag,
      except: some(['cause:tooling', 'cause:none', 'station:a,b', 'found:field', 'shift:none']),
    }),
  )
  .chain((fields) =>
    fc
      .subarray(Object.keys(fields) as (keyof typeof fields)[], { maxLength: 3 })
      .map((kept): Fields => Object.fromEntries(kept.map((key) => [key, fields[key]]))),
  );
const periods = fc
  .tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 1, max: 60 }))
  .map(([from, days]) => ({ from: dayAfter(from), to: dayAfter(from + days) }));

const facts = fc.constant(null).chain(() =>
  fc.record({
    reports: fc.array(reportFact(world), { maxLength: 45 }),
    production: productionFacts(world),
  }),
);

test('parts make the whole, all answers agree, and every bar opens its reports', { timeout: 300_000 }, () =>
  fc.assert(
    fc.asyncProperty(
      facts,
      filters,
      periods,
      fc.constantFrom(...dimensions),
      fc.constantFrom(...measures),
      async ({ reports, production }, chosen, period, dimension, measure) => {
        await store(reports, production);
        const filter: Fields = { ...chosen, ...period, currency: 'EUR' };
        const { currency: _, ...listed } = filter;
        const pareto = await get<Pareto>('analyses/pareto', { ...filter, dimension, measure, bars: '3' });
        const whole = countsOf(pareto.total);

        expect(summed([...pareto.bars, ...(pareto.other ? [pareto.other] : [])])).toEqual(whole);
        if (measure !== 'rate') {
          const values = [...pareto.bars, ...(pareto.other ? [pareto.other] : [])].map(({ value }) => value ?? 0);
          expect(values.reduce((sum, value) => sum + value, 0)).toBe(pareto.total.value);
        }
        const opened = { reports: whole.reports, terminals: whole.terminals };
        expect(await count(listed)).toEqual(opened);
        if (Object.keys(chosen).every((field) => field in columns)) expect(selected(reports, filter)).toEqual(opened);
        await agrees(filter, whole);
        await opens(pareto, dimension, listed);
      },
    ),
    { numRuns: 250 },
  ),
);

/** Rates, escapes and costs of the same filter add up to the same whole. */
async function agrees(filter: Fields, whole: Counts) {
  const escapes = await get<Escapes>('analyses/escapes', filter);
  expect(countsOf(escapes.total)).toEqual(whole);
  expect(summed(escapes.cells)).toEqual(whole);
  expect(summed(escapes.cells.filter(({ origin }) => origin === null)).reports).toBe(escapes.withoutOrigin.reports);

  const costs = await get<Costs>('analyses/costs', filter);
  expect(money({ ...whole, ...costs })).toEqual(money(whole));
  expect(summed(costs.byFound)).toEqual(whole);
  expect(costs.byCategory.reduce((sum, { bookedMinor }) => sum + bookedMinor, 0)).toBe(whole.bookedMinor);
  expect(costs.byCategory.reduce((sum, { estimatedMinor }) => sum + estimatedMinor, costs.standardMinor)).toBe(
    whole.estimateMinor,
  );
  const { currency: _, ...listed } = filter;
  expect((await count({ ...listed, cost: filter.cost ?? 'none' })).reports).toBe(
    filter.cost && filter.cost !== 'none' ? whole.reports : costs.withoutCost,
  );
  if (!filter.avoidable) expect((await count({ ...listed, avoidable: 'true' })).reports).toBe(costs.avoidable.reports);

  const rates = await get<Rates>('analyses/rates', filter);
  const { reports, terminals } = whole;
  expect(rates.overall).toMatchObject({ reports, terminals });
  const zero = { bookedMinor: 0, estimateMinor: 0 };
  for (const parts of [rates.buckets, rates.byPlant])
    expect(summed(parts.map((part) => ({ ...part, ...zero })))).toEqual({ reports, terminals, ...zero });
}

/** Each bar by its key, the other bar by its exceptions. */
async function opens(pareto: Pareto, dimension: Dimension, filter: Fields) {
  for (const bar of pareto.bars) {
    const opened = { ...filter, [dimension]: bar.key };
    expect([bar.key, await count(opened)]).toEqual([bar.key, { reports: bar.reports, terminals: bar.terminals }]);
  }
  if (!pareto.other) return;
  const { reports, terminals, except } = pareto.other;
  expect(await count({ ...filter, except: [filter.except ?? [], except].flat() })).toEqual({ reports, terminals });
}

test('the week agrees with the analyses and every link opens what it counts', { timeout: 300_000 }, () =>
  fc.assert(
    fc.asyncProperty(
      facts,
      fc.nat(62),
      fc.constant(null).chain(() => some(world.plants.map(({ id }) => id))),
      async ({ reports, production }, day, plant) => {
        await store(reports, production);
        const week = await get<Week>('week', { start: dayAfter(day), plant, currency: 'EUR' });
        const filter: Fields = { ...week.period, plant, currency: 'EUR' };
        const { total } = await get<Pareto>('analyses/pareto', filter);
        const { passedTwo } = await get<Escapes>('analyses/escapes', filter);
        const figure = Object.fromEntries(week.headlines.map((it) => [it.key, it.figure.value]));
        expect(figure).toMatchObject({
          reports: total.reports,
          terminals: total.terminals,
          escaped: passedTwo.reports,
        });
        const net = (value: number | null | undefined, minor: number) => expect([null, minor]).toContain(value);
        net(figure.booked, total.bookedMinor);
        net(figure.estimate, total.estimateMinor);

        for (const { key, filter: link } of week.headlines) {
          const { reports: opened, terminals } = await count(link);
          if (['reports', 'escaped', 'outside'].includes(key)) expect([key, opened]).toEqual([key, figure[key]]);
          if (key === 'terminals') expect(terminals).toBe(figure.terminals);
          const costs = await get<Costs>('analyses/costs', `${link}&currency=EUR`);
          if (key === 'booked') net(figure.booked, costs.bookedMinor);
          if (key === 'estimate') net(figure.estimate, costs.estimateMinor);
        }
        for (const { filter: link, reports: counted, terminals } of week.topCauses)
          expect(await count(link)).toEqual({ reports: counted, terminals });
        for (const { kind, link, count: counted } of [...week.decisions, ...week.gaps])
          if (link.startsWith('/failures?'))
            expect([kind, (await count(link.slice('/failures?'.length))).reports]).toEqual([kind, counted]);
      },
    ),
    { numRuns: 25 },
  ),
);
