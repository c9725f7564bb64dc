import { z } from 'zod';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import { filterWhere } from '#api/platform/filter.ts';
import type { Filter } from '#contracts/shared/filter.ts';
import { join, queryRows, sql } from '#db/sql.ts';

const Counts = z.object({ counts: z.array(z.number()) });

/** How many reports each filter selects, in one statement. */
export async function countReports({ db, scope }: Asked, filters: readonly Filter[]): Promise<number[]> {
  const counts = filters.map(
    (filter) => sql`(select count(*) from failure_fact f where ${filterWhere(filter, scope)})`,
  );
  const [row] = await queryRows(db.pool, sql`select array[${join(counts)}]::int8[] as counts`, Counts);
  return row!.counts;
}

/** Tools in use whose service interval has run out. */
export async function countDueTools({ db, plants }: Asked): Promise<number> {
  const [row] = await queryRows(
    db.pool,
    sql`select count(*)::int as due from tool t where t.plant_id = any(${plants.map(({ id }) => id)}::uuid[])
      and t.retired_at is null and t.due`,
    z.object({ due: z.number() }),
  );
  return row!.due;
}

const Days = z.object({ days: z.number(), without: z.number() });

/** Days on which a plant reported failures, and how many of them have no production. */
export async function daysWithoutProduction({ db, filter, scope }: Asked): Promise<z.infer<typeof Days>> {
  const [row] = await queryRows(
    db.pool,
    sql`select count(*)::int as days, (count(*) filter (where not exists (
          select from production_day_fact p where p.plant_id = d.plant_id and p.day = d.found_on)))::int as without
      from (select distinct f.plant_id, f.found_on from failure_day_fact f where ${filterWhere(filter, scope)}) d`,
    Days,
  );
  return row!;
}
