/** The roll-ups equal the base data after any history of inserts, changes, voids and removals, also of several writers at once. */
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { z } from 'zod';
import { causes } from '#contracts/taxonomy.ts';
import { type Database, openDatabase } from '#db/client.ts';
import { execute, queryRows, type Sql, sql } from '#db/sql.ts';
import { createTestDatabase, type TestDatabase } from '#db/testing.ts';
import { dayAfter, makeWorld, productionFacts, reportFact, type World } from '#tests/support/arbitrary-facts.ts';
import { addProduction, addReports, type ProductionFact, type ReportFact } from '#tests/support/facts.ts';

let copy: TestDatabase;
let db: Database;
let world: World;

beforeAll(async () => {
  copy = await createTestDatabase();
  db = await openDatabase(copy.url);
  world = await makeWorld(db);
});
afterAll(async () => {
  await db.close();
  await copy.drop();
});

const Text = z.object({ text: z.string() });
const tables: Record<string, Sql> = {
  failure_by_day: sql`select r::text as text from failure_by_day r order by 1`,
  failure_by_week: sql`select r::text as text from failure_by_week r order by 1`,
  failure_by_month: sql`select r::text as text from failure_by_month r order by 1`,
  production_by_day: sql`select r::text as text from production_by_day r order by 1`,
  production_by_month: sql`select r::text as text from production_by_month r order by 1`,
};
async function rollups() {
  const cells: Record<string, string[]> = {};
  for (const [table, select] of Object.entries(tables))
    cells[table] = (await queryRows(db.pool, select, Text)).map(({ text }) => text);
  return cells;
}
async function expectEqualToBase() {
  const kept = await rollups();
  await execute(db.pool, sql`select rebuild_failure_rollups(), rebuild_production_rollups()`);
  expect(kept).toEqual(await rollups());
  const [totals] = await queryRows(
    db.pool,
    sql`select (select coalesce(sum(d.reports), 0) from failure_by_day d)::int as by_day, (select coalesce(sum(w.reports), 0) from failure_by_week w)::int as by_week,
      (select coalesce(sum(m.reports), 0) from failure_by_month m)::int / 4 as by_month, (select count(*) from failure_fact)::int as base,
      (select coalesce(sum(d.terminals), 0) from production_by_day d)::int as inserted, (select coalesce(sum(p.terminals), 0) from production_fact p)::int as produced`,
    z.object({
      by_day: z.number(),
      by_week: z.number(),
      by_month: z.number(),
      base: z.number(),
      inserted: z.number(),
      produced: z.number(),
    }),
  );
  const { base, produced } = totals!;
  expect(totals).toEqual({ by_day: base, by_week: base, by_month: base, base, inserted: produced, produced });
}

type Step =
  | { kind: 'add'; reports: ReportFact[] }
  | { kind: 'produce'; rows: ProductionFact[] }
  | { kind: 'change'; nth: number; change: Change }
  | { kind: 'changeProduction'; units: number }
  | { kind: 'remove' | 'void'; nth: number };
type Change = 'sort' | 'cost' | 'quantity' | 'day' | 'part' | 'note' | 'origin';

const of = (nth: number) =>
  sql`id in (select f.id from failure f order by f.id offset ${nth % 7} limit ${nth < 30 ? 1 : 1 + (nth % 3)})`;
const changes: Record<Change, (nth: number) => Sql> = {
  sort: (nth) => sql`update failure set cause = ${causes[nth % causes.length]!}::cause where ${of(nth)}`,
  cost: (nth) => sql`update failure set cost_items = 1, booked_minor = ${(nth * 37) % 5000} where ${of(nth)}`,
  quantity: (nth) => sql`update failure set quantity_found = ${1 + (nth % 50)} where ${of(nth)}`,
  day: (nth) => sql`update failure set found_on = ${dayAfter(nth % 60)}::date where ${of(nth)}`,
  part: (nth) =>
    sql`update failure set housing_id = ${world.housings[nth % 3]!}::uuid, tool_id = null where ${of(nth)}`,
  note: (nth) => sql`update failure set note = 'changed' where ${of(nth)}`,
  origin: (nth) =>
    sql`update failure set origin = least(found, ${1 + (nth % 9)}), gates_passed = ${nth % 4} where ${of(nth)}`,
};
async function apply(step: Step) {
  if (step.kind === 'add') await addReports(db, step.reports);
  else if (step.kind === 'produce')
    for (const row of step.rows)
      await addProduction(db, [row]).catch((error: { code?: string }) => expect(error.code).toBe('P2002'));
  else if (step.kind === 'changeProduction')
    await execute(
      db.pool,
      sql`insert into production (id, plant_id, day, units, terminals) values (gen_random_uuid(), ${world.plants[0]!.id}, ${dayAfter(3)}::date, 1, ${step.units})
        on conflict (plant_id, day, line_id, housing_id, terminal_id) do update set terminals = excluded.terminals`,
    );
  else if (step.kind === 'change') await execute(db.pool, changes[step.change](step.nth));
  else if (step.kind === 'void')
    await execute(
      db.pool,
      sql`update failure set voided_at = now(), void_reason = 'a mistake' where ${of(step.nth)} and voided_at is null`,
    );
  else await execute(db.pool, sql`delete from failure where ${of(step.nth)}`);
}

const nth = fc.nat(500);
const steps = fc.constant(null).chain(() =>
  fc.array(
    fc.oneof(
      fc.record({
        kind: fc.constant('add' as const),
        reports: fc.array(reportFact(world), { minLength: 1, maxLength: 8 }),
      }),
      fc.record({ kind: fc.constant('produce' as const), rows: productionFacts(world) }),
      fc.record({ kind: fc.constant('changeProduction' as const), units: nth }),
      {
        weight: 4,
        arbitrary: fc.record({
          kind: fc.constant('change' as const),
          nth,
          change: fc.constantFrom<Change>('sort', 'cost', 'quantity', 'day', 'part', 'note', 'origin'),
        }),
      },
      fc.record({ kind: fc.constantFrom('remove' as const, 'void' as const), nth }),
    ),
    { minLength: 1, maxLength: 14 },
  ),
);

test('after any history', { timeout: 300_000 }, () =>
  fc.assert(
    fc.asyncProperty(steps, async (history) => {
      await execute(db.pool, sql`truncate failure, cost_item, production cascade`);
      for (const step of history) await apply(step);
      await expectEqualToBase();
    }),
    { numRuns: 40 },
  ),
);

test('with many writers on the same cells', async () => {
  await execute(db.pool, sql`truncate failure, cost_item, production cascade`);
  const facts = fc
    .sample(reportFact(world), { numRuns: 60, seed: 5 })
    .map((fact) => ({ ...fact, foundOn: dayAfter(1) }));
  await Promise.all(facts.map((fact) => addReports(db, [fact])));
  await Promise.all([
    ...Array.from({ length: 30 }, (_, place) =>
      apply({ kind: 'change', nth: place, change: place % 2 ? 'sort' : 'quantity' }),
    ),
    ...Array.from({ length: 10 }, (_, place) => apply({ kind: 'void', nth: place })),
  ]);
  await expectEqualToBase();
});
