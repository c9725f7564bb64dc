/** The demo holds what it promises, and its rows are such as the service itself would have written. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { loadDemoFor } from '#api/demo.ts';
import { convertMinor } from '#api/features/failures/conversion.rules.ts';
import { reportNumber } from '#api/features/failures/numbering.ts';
import { causeTaxonomy } from '#contracts/taxonomy.ts';
import { queryRows, type Sql, sql } from '#db/sql.ts';
import { demoPassword, people } from '#seed/group/people.ts';
import { anchor, createDemoApp, type Demo } from '#tests/support/demo.ts';

let demo: Demo;
beforeAll(async () => {
  demo = await createDemoApp();
}, 240_000);
afterAll(() => demo.close());

const Figures = z.record(z.string(), z.union([z.number(), z.string(), z.null()]));
const figures = async (question: Sql) => (await queryRows(demo.db.pool, question, Figures))[0]!;
/** How many rows break a rule. */
const broken = async (from: Sql) => (await figures(sql`select count(*) as broken from ${from}`)).broken;

describe('what is in it', () => {
  test('plants, parts and tools of every kind', async () => {
    const found = await figures(sql`select count(distinct p.zone) as zones, count(distinct p.currency) as currencies,
      count(distinct p.locale) as locales, count(distinct p.week_start) as first_days,
      (select count(*) from housing) as housings, (select count(*) from terminal) as terminals, (select count(*) from tool) as tools,
      (select count(distinct (h.retention_style, h.secondary_lock)) from housing h) as kinds,
      (select count(distinct h.retention_style) from housing h) as styles, (select count(distinct h.secondary_lock) from housing h) as locks,
      (select count(*) from housing h where h.safety_relevant) as safety,
      (select count(*) from tool t where t.retired_at is null and t.cycle_count - t.serviced_at_count >= t.service_interval) as overdue
      from plant p`);
    expect(found).toMatchObject({ zones: 5, currencies: 5, locales: 2, first_days: 2, housings: 26, terminals: 20 });
    expect(found).toMatchObject({ tools: 81, kinds: 6, styles: 2, locks: 4, safety: 8, overdue: 6 });
  });
  test('about 20,000 reports over eighteen months, and production to divide them by', async () => {
    const found =
      await figures(sql`select count(*) as reports, min(f.found_on)::text as first, max(f.found_on)::text as last,
      (select count(*) from production) as production, count(distinct f.cause) as causes,
      avg((f.cause is null)::int)::float8 as unsorted, avg((f.note is null)::int)::float8 as silent, sum(f.photo_count) as photos
      from failure f`);
    expect(found.reports).toBeGreaterThan(19_000);
    expect(found.reports).toBeLessThan(21_000);
    expect(found.production).toBeGreaterThan(30_000);
    expect(found).toMatchObject({ causes: 10, first: '2024-12-15' });
    expect(['2026-06-13', anchor]).toContain(found.last);
    expect(found.unsorted).toBeGreaterThan(0.005);
    expect(found.unsorted).toBeLessThan(0.05);
    expect(found.photos).toBeGreaterThan(30);
  });
  test('notes in five languages', async () => {
    for (const word of ['terminal', 'kontakt', 'caja', 'przewody', '端子'])
      expect(await broken(sql`failure f where f.note ilike ${`%${word}%`}`), word).toBeGreaterThan(20);
  });
  test('an account of every role signs in with the demo password', async () => {
    for (const { email } of people.filter(({ plant }) => plant === null || plant === 'QRO')) {
      const payload = { email, password: demoPassword };
      const { statusCode } = await demo.app.inject({ method: 'POST', url: '/api/v1/session', payload });
      expect(statusCode, email).toBe(200);
    }
  });
  test('a photo opens', async () => {
    const [photo] = await queryRows(
      demo.db.pool,
      sql`select h.id, h.bytes from photo h limit 1`,
      z.object({ id: z.string(), bytes: z.int() }),
    );
    const { status, raw } = await demo.viewer.get(`/api/v1/photos/${photo!.id}`);
    expect([status, raw.length]).toEqual([200, photo!.bytes]);
  });
  test('it loads into an empty database only', async () => {
    const { config } = demo.app;
    await expect(loadDemoFor(config, config.databaseUrl!, () => {})).rejects.toThrow('holds data already');
  });
});

describe('its rows keep the rules', () => {
  test.each([
    ['origin before found', sql`failure f where f.origin > f.found`],
    ['built before found', sql`failure f where f.built_on > f.found_on`],
    ['inspected at least what was found', sql`failure f where f.quantity_inspected < f.quantity_found`],
    [
      'found at a stage of the plant',
      sql`failure f left join stage s on s.id = f.stage_id and s.plant_id = f.plant_id and s.common = f.found where s.id is null`,
    ],
    [
      'at a line of the plant',
      sql`failure f left join line l on l.id = f.line_id and l.plant_id = f.plant_id where l.id is null and f.line_id is not null`,
    ],
    [
      'with tools of the plant',
      sql`(select f.plant_id, unnest(array_append(f.other_tool_ids, f.tool_id)) as tool_id from failure f) f
      left join tool t on t.id = f.tool_id and t.plant_id = f.plant_id where t.id is null and f.tool_id is not null`,
    ],
    [
      'in cavities of the housing',
      sql`(select f.housing_id, unnest(f.cavities) as mark from failure f where f.housing_id is not null) f
      join housing h on h.id = f.housing_id where ascii(f.mark) - 64 > h.rows or substr(f.mark, 2)::int > h.columns or f.mark = any(h.missing_cavities)`,
    ],
    [
      'a terminal that fits its wire',
      sql`failure f join terminal t on t.id = f.terminal_id join wire w on w.id = f.wire_id
      where w.section_mm2 not between t.wire_min_mm2 and t.wire_max_mm2`,
    ],
    [
      'safety from the housing',
      sql`failure f join housing h on h.id = f.housing_id where f.safety <> h.safety_relevant`,
    ],
    [
      'found on its plant’s day, reported then or later, never after the anchor',
      sql`failure f join plant p on p.id = f.plant_id
      where (f.found_at at time zone p.zone)::date <> f.found_on or f.reported_at < f.found_at
        or (f.reported_at at time zone p.zone)::date > ${anchor} or (f.sorted_at at time zone p.zone)::date > ${anchor}`,
    ],
    [
      'sorted after it was reported',
      sql`cause_change c join failure f on f.id = c.failure_id where c.at < f.reported_at`,
    ],
    [
      'production of the plant’s lines',
      sql`production p left join line l on l.id = p.line_id and l.plant_id = p.plant_id where l.id is null`,
    ],
    ['nobody produces on Sundays', sql`production p where extract(isodow from p.day) = 7`],
    [
      'a lot in two plants only as the same terminal',
      sql`(select count(distinct f.terminal_id) as terminals from failure f
      where f.reel_lot is not null and f.terminal_id is not null group by f.reel_lot) f where f.terminals > 1`,
    ],
  ])('%s', async (_, rule) => {
    expect(await broken(rule)).toBe(0);
  });
  test('sub-causes belong to their causes', async () => {
    const rows = await queryRows(
      demo.db.pool,
      sql`select distinct f.cause, f.sub_cause from failure f where f.sub_cause is not null`,
      z.object({ cause: z.string(), sub_cause: z.string() }),
    );
    for (const { cause, sub_cause } of rows)
      expect(causeTaxonomy[cause as keyof typeof causeTaxonomy].subCauses).toContain(sub_cause);
  });
});

describe('as the service would have written it', () => {
  test('numbers run per plant and year, and the counters know the last', async () => {
    const rows = await queryRows(
      demo.db.pool,
      sql`select f.number, p.code, extract(year from f.found_on)::int as year, c.last::int as last,
        row_number() over (partition by p.code, extract(year from f.found_on) order by f.number)::int as running
      from failure f join plant p on p.id = f.plant_id left join report_counter c on c.plant_id = p.id and c.year = extract(year from f.found_on)`,
      z.object({ number: z.string(), code: z.string(), year: z.int(), last: z.int(), running: z.int() }),
    );
    for (const { number, code, year, running } of rows) expect(number).toBe(reportNumber(code, year, running));
    expect(rows.every(({ running, last }) => running <= last)).toBe(true);
    expect(rows.filter(({ running, last }) => running === last)).toHaveLength(15);
  });
  test.each([
    [
      'derived figures',
      sql`failure f join failure_figures g on g.id = f.id and g.plant_id = f.plant_id
      where (f.standard_minor, f.gate, f.gate_minor, f.gates_passed) is distinct from (g.standard_minor, g.gate, g.gate_minor, g.gates_passed)`,
    ],
    [
      'sums of cost items',
      sql`failure f left join (select c.failure_id, count(*) as items,
        coalesce(sum(c.plant_minor) filter (where c.basis = 'booked'), 0) as booked,
        coalesce(sum(c.plant_minor) filter (where c.basis = 'estimated'), 0) as estimated from cost_item c group by 1) c on c.failure_id = f.id
      where (f.cost_items, f.booked_minor, f.estimated_minor) is distinct from (coalesce(c.items, 0), coalesce(c.booked, 0), coalesce(c.estimated, 0))`,
    ],
    [
      'the last change of the cause',
      sql`failure f left join lateral (select * from cause_change c where c.failure_id = f.id order by c.at desc limit 1) c on true
      where (f.cause, f.sub_cause, f.origin, f.proof, f.sorted_at, f.sorted_by) is distinct from (c.cause, c.sub_cause, c.origin, c.proof, c.at, c.person_id)`,
    ],
    ['photo counts', sql`failure f where f.photo_count <> (select count(*) from photo h where h.failure_id = f.id)`],
    [
      'minutes at the plant’s rate',
      sql`cost_item c where c.minutes is not null and c.amount_minor <> (
      select round(c.minutes * r.hourly_minor / 60.0) from cost_rate r where r.plant_id = c.plant_id and r.valid_from <= c.incurred_on
        and r.kind::text = case c.category when 'line_stop' then 'line_stop' else 'labour' end order by r.valid_from desc limit 1)`,
    ],
  ])('%s', async (_, rule) => {
    expect(await broken(rule)).toBe(0);
  });
  test('foreign charges at the rate of their day', async () => {
    const rows = await queryRows(
      demo.db.pool,
      sql`select c.amount_minor, c.currency, c.plant_minor, p.currency as own, r.rate, c.rate_on::text as on
      from cost_item c join plant p on p.id = c.plant_id left join exchange_rate r on r.base = c.currency and r.quote = p.currency
        and r.valid_from = (select max(x.valid_from) from exchange_rate x where x.valid_from <= c.incurred_on) and r.valid_from = c.rate_on
      where c.currency <> p.currency`,
      z.object({
        amount_minor: z.int(),
        currency: z.string(),
        plant_minor: z.int(),
        own: z.string(),
        rate: z.string(),
        on: z.string(),
      }),
    );
    expect(rows.length).toBeGreaterThan(100);
    for (const { amount_minor, currency, own, rate, on, plant_minor } of rows)
      expect(convertMinor(amount_minor, currency, own, [{ base: currency, quote: own, rate, on }])).toBe(
        BigInt(plant_minor),
      );
  });
});
