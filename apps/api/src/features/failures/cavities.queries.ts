import { z } from 'zod';
import type { PlantScope } from '#api/platform/actor.ts';
import { filterWhere } from '#api/platform/filter.ts';
import type { Filter } from '#contracts/shared/filter.ts';
import type { Database } from '#db/client.ts';
import { queryOne, sql } from '#db/sql.ts';

const Counts = z.object({
  reports: z.int(),
  withoutCavity: z.int(),
  cavities: z.array(z.object({ cavity: z.string(), reports: z.int() })),
});

/** Reports per cavity; a report that names several counts on each of them. */
export async function cavityCounts(db: Database, scope: PlantScope, filter: Filter): Promise<z.infer<typeof Counts>> {
  const counts = await queryOne(
    db.pool,
    sql`with chosen as (
        select r.cavities from failure_fact f join failure r on r.id = f.id and r.plant_id = f.plant_id
        where ${filterWhere(filter, scope)}),
      counted as (select c.cavity, count(*) as reports from chosen, unnest(chosen.cavities) as c (cavity) group by 1)
      select (select count(*) from chosen) as reports,
        (select count(*) from chosen where cardinality(cavities) = 0) as "withoutCavity",
        (select coalesce(json_agg(counted order by counted.reports desc, counted.cavity), '[]') from counted) as cavities`,
    Counts,
  );
  return counts ?? { reports: 0, withoutCavity: 0, cavities: [] };
}
