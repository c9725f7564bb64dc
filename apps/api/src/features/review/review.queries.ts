import { z } from 'zod';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import type { PlantScope } from '#api/platform/actor.ts';
import { decodeCursor, toPage } from '#api/platform/cursor.ts';
import { filterWhere } from '#api/platform/filter.ts';
import type { listReviews, ReviewLine } from '#contracts/review.ts';
import type { DataVersion } from '#contracts/review-content.ts';
import type { Output } from '#contracts/shared/endpoint.ts';
import { Day, Id, Locale, Paper } from '#contracts/shared/scalars.ts';
import type { Database } from '#db/client.ts';
import { join, queryOne, queryRows, sql } from '#db/sql.ts';
import type { Scope } from './scope.rules.ts';

const Place = z.object({
  id: z.string(),
  code: z.string(),
  name: z.string(),
  zone: z.string(),
  week_start: z.number(),
  locale: Locale,
  paper: Paper,
  retired: z.boolean(),
});
export type Place = z.infer<typeof Place>;

/** The plants by code, retired ones too: their past weeks stay. */
export const readPlaces = (db: Database, scope: PlantScope): Promise<Place[]> =>
  queryRows(
    db.pool,
    sql`select p.id, p.code, p.name, p.zone, p.week_start, p.locale, p.paper, p.retired_at is not null as retired
      from plant p where ${scope === 'all'} or p.id = any(${scope === 'all' ? [] : [...scope]}::uuid[]) order by p.code`,
    Place,
  );

const Counted = z.object({
  change_id: z.string().nullable(),
  change_at: z.date().nullable(),
  reports: z.number(),
  terminals: z.number(),
  migration: z.string(),
});

/** What the database held for these plants when the figures were counted. */
export async function dataVersion(
  db: Database,
  { plantIds }: Scope,
): Promise<Omit<DataVersion, 'figuresAt' | 'application'>> {
  const row = (await queryOne(
    db.pool,
    sql`select a.id as change_id, a.at as change_at,
        (select coalesce(sum(f.reports), 0)::int8 from failure_month_fact f
          where f.dimension = 'line' and f.plant_id = any(p.ids)) as reports,
        (select coalesce(sum(s.terminals), 0)::int8 from production_month_fact s
          where s.dimension = 'line' and s.plant_id = any(p.ids)) as terminals,
        (select m.migration_name from _prisma_migrations m order by m.migration_name desc limit 1) as migration
      from (select ${[...plantIds]}::uuid[] as ids) p
        left join lateral (
          select e.id, e.at from unnest(p.ids) as of (plant_id) cross join lateral (
            select n.id, n.at from audit_entry n where n.plant_id = of.plant_id order by n.id desc limit 1) e
          order by e.id desc limit 1) a on true`,
    Counted,
  ))!;
  return {
    lastChange: row.change_id === null ? null : { id: row.change_id, at: row.change_at!.toISOString() },
    reports: row.reports,
    terminalsInserted: row.terminals,
    migration: row.migration,
  };
}

const Passed = z.object({ passed: z.array(z.number()) });

/** How many reports passed at least so many gates, for each number asked; in one statement. */
export async function reportsByGatesPassed(
  { db, filter, scope }: Pick<Asked, 'db' | 'filter' | 'scope'>,
  gates: readonly number[],
): Promise<number[]> {
  const counts = gates.map((atLeast) => sql`count(*) filter (where f.gates_passed >= ${atLeast})`);
  const [row] = await queryRows(
    db.pool,
    sql`select array[${join(counts)}]::int8[] as passed from failure_fact f where ${filterWhere(filter, scope)}`,
    Passed,
  );
  return row!.passed;
}

const Line = z.object({
  id: z.string(),
  scope: z.string(),
  plant_codes: z.array(z.string()),
  week_from: z.string(),
  edition: z.number(),
  decisions: z.number(),
  opened_at: z.date(),
  closed_at: z.date().nullable(),
  closed_by: z.string().nullable(),
});

/** Reviews that are kept of the plants in the scope, newest week first; that of the group only where the scope is all plants. */
export async function listKept(
  db: Database,
  scope: PlantScope,
  { plant, cursor, limit }: NonNullable<Output<typeof listReviews.query>>,
) {
  const after = decodeCursor(cursor, z.tuple([Day, Id]));
  const conditions = [
    sql`true`,
    ...(scope === 'all' ? [] : [sql`(r.scope <> 'group' and r.plant_ids <@ ${[...scope]}::uuid[])`]),
    ...(plant?.length ? [sql`r.plant_ids && ${plant}::uuid[]`] : []),
    ...(after ? [sql`(r.week_from, r.id) < (${after[0]}::date, ${after[1]}::uuid)`] : []),
  ];
  const rows = await queryRows(
    db.pool,
    sql`select r.id, r.scope, array(select p.code from plant p where p.id = any(r.plant_ids) order by p.code) as plant_codes,
        r.week_from, r.edition, r.opened_at, r.closed_at, r.closed_by,
        (select count(*)::int from review o join action a on a.review_id = o.id
          where o.scope = r.scope and o.week_from = r.week_from and o.edition <= r.edition) as decisions
      from review r where ${join(conditions, ' and ')} order by r.week_from desc, r.id desc limit ${limit + 1}`,
    Line,
  );
  const { items, next } = toPage(rows, limit, (row) => [row.week_from, row.id]);
  return {
    items: items.map(
      (row): ReviewLine => ({
        id: row.id,
        group: row.scope === 'group',
        plantCodes: row.plant_codes,
        weekFrom: row.week_from,
        edition: row.edition,
        state: row.closed_at ? 'closed' : 'open',
        decisions: row.decisions,
        openedAt: row.opened_at.toISOString(),
        closedAt: row.closed_at?.toISOString() ?? null,
        closedBy: row.closed_by,
      }),
    ),
    next,
  };
}
