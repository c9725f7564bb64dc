import { z } from 'zod';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import { filterWhere } from '#api/platform/filter.ts';
import type { Filter } from '#contracts/shared/filter.ts';
import { queryRows, raw, sql } from '#db/sql.ts';

/** What counts: reports from customers and the field, or what the stage `field` found. The words are those of an index. */
const counted = {
  outside: raw("f.source in ('customer', 'field')"),
  field: raw('f.found = 10'),
};
export type Counted = keyof typeof counted;

const Start = z.object({ plant_id: z.string(), day: z.string().nullable() });

/** The first day with a report, per plant. */
export const firstReports = ({ db, plants }: Asked) =>
  queryRows(
    db.pool,
    sql`select p.id as plant_id, (select min(f.found_on) from failure_fact f where f.plant_id = p.id) as day
      from plant p where p.id = any(${plants.map(({ id }) => id)}::uuid[])`,
    Start,
  );

const Seen = z.object({ plant_id: z.string(), built: z.string(), failed: z.string(), reports: z.number() });
export type Seen = z.infer<typeof Seen>;

/** Reports per plant, first day of the month of building and of the month found. */
export const reportsByMonths = ({ db, scope }: Asked, filter: Filter, what: Counted): Promise<Seen[]> =>
  queryRows(
    db.pool,
    sql`select f.plant_id, date_trunc('month', f.built_on::timestamp)::date as built,
        date_trunc('month', f.found_on::timestamp)::date as failed, count(*)::int as reports
      from failure_fact f where ${filterWhere(filter, scope)} and ${counted[what]} and f.built_on is not null group by 1, 2, 3`,
    Seen,
  );

const Undated = z.object({ plant_id: z.string(), reports: z.number() });

/** Reports without a day built. */
export const undatedReports = ({ db, scope }: Asked, filter: Filter, what: Counted) =>
  queryRows(
    db.pool,
    sql`select f.plant_id, count(*)::int as reports from failure_fact f
      where ${filterWhere(filter, scope)} and ${counted[what]} and f.built_on is null group by 1`,
    Undated,
  );

const Aged = z.object({ plant_id: z.string(), built: z.string(), weeks: z.number(), reports: z.number() });
export type Aged = z.infer<typeof Aged>;

/** Reports per plant, first day of the month of building and whole weeks from building to being found. */
export const reportsByAge = ({ db, scope }: Asked, filter: Filter): Promise<Aged[]> =>
  queryRows(
    db.pool,
    sql`select f.plant_id, date_trunc('month', f.built_on::timestamp)::date as built, (f.found_on - f.built_on) / 7 as weeks,
        count(*)::int as reports
      from failure_fact f where ${filterWhere(filter, scope)} and ${counted.outside} and f.built_on is not null group by 1, 2, 3`,
    Aged,
  );
