import { z } from 'zod';
import type { Period } from '#analysis/calendar/period.ts';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import { Sums, sumColumns } from '#api/features/analyses/sums.ts';
import { filterWhere } from '#api/platform/filter.ts';
import { queryRows, sql } from '#db/sql.ts';

const HeadlineSums = Sums.extend({
  booked_squared: z.number(),
  booked_largest: z.number(),
  estimate_squared: z.number(),
  estimate_largest: z.number(),
  escaped: z.number(),
  outside: z.number(),
  no_cause: z.number(),
  no_origin: z.number(),
  no_evidence: z.number(),
});
export type HeadlineSums = z.infer<typeof HeadlineSums>;

/** Everything the headlines and gaps count of one period, per plant. */
export const headlineSums = ({ db, filter, scope }: Asked, period: Period): Promise<HeadlineSums[]> =>
  queryRows(
    db.pool,
    sql`select ${sumColumns},
        sum(f.booked_minor::float8 ^ 2) as booked_squared, max(f.booked_minor) as booked_largest,
        sum(f.estimate_minor::float8 ^ 2) as estimate_squared, max(f.estimate_minor) as estimate_largest,
        (count(*) filter (where f.gates_passed >= 2))::int as escaped,
        (count(*) filter (where f.source in ('customer', 'field')))::int as outside,
        (count(*) filter (where f.cause is null))::int as no_cause,
        (count(*) filter (where f.origin is null))::int as no_origin,
        (count(*) filter (where not f.evidence))::int as no_evidence
      from failure_fact f where ${filterWhere({ ...filter, ...period }, scope)} group by f.plant_id`,
    HeadlineSums,
  );
