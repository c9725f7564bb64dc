import { z } from 'zod';
import { filterWhere } from '#api/platform/filter.ts';
import { CostCategory } from '#contracts/taxonomy.ts';
import { queryRows, sql } from '#db/sql.ts';
import type { Asked } from './asked.service.ts';
import { Sums, sumColumns } from './sums.ts';

const FoundCosts = Sums.extend({
  found: z.number(),
  standard: z.number(),
  priced: z.number(),
  sum_log: z.number(),
  sum_log_squares: z.number(),
  late: z.number(),
  avoidable: z.number(),
  no_cause: z.number(),
  no_origin: z.number(),
  no_cost: z.number(),
  no_standard_cost: z.number(),
});
export type FoundCosts = z.infer<typeof FoundCosts>;

/**
 * Per found stage and plant: sums; booked cost per terminal as sums of logarithms over reports with a booked cost above 0;
 * and what was found later than the first gate able to see it. Every report is either computable or has one reason.
 */
export const costsByFound = ({ db, filter, scope }: Asked): Promise<FoundCosts[]> =>
  queryRows(
    db.pool,
    sql`select f.found, ${sumColumns}, coalesce(sum(f.estimate_minor) filter (where f.standard_only), 0)::bigint as standard,
        (count(*) filter (where f.booked_minor > 0))::int as priced,
        coalesce(sum(ln(f.booked_minor::float8 / f.terminals)) filter (where f.booked_minor > 0), 0) as sum_log,
        coalesce(sum(ln(f.booked_minor::float8 / f.terminals) ^ 2) filter (where f.booked_minor > 0), 0) as sum_log_squares,
        (count(*) filter (where f.gate < f.found))::int as late,
        coalesce(sum(f.booked_minor + f.estimate_minor - f.gate_minor) filter (where f.gate < f.found and f.costed), 0)::bigint as avoidable,
        (count(*) filter (where f.cause is null or f.cause = 'undetermined'))::int as no_cause,
        (count(*) filter (where f.cause <> 'undetermined' and f.origin is null))::int as no_origin,
        (count(*) filter (where f.gate < f.found and not f.costed))::int as no_cost,
        (count(*) filter (where f.gate < f.found and f.costed and f.gate_minor is null))::int as no_standard_cost
      from failure_fact f where ${filterWhere(filter, scope)} group by f.found, f.plant_id`,
    FoundCosts,
  );

const CategoryCosts = z.object({
  plant_id: z.string(),
  category: CostCategory,
  booked: z.number(),
  estimate: z.number(),
});
export type CategoryCosts = z.infer<typeof CategoryCosts>;

export const costsByCategory = ({ db, filter, scope }: Asked): Promise<CategoryCosts[]> =>
  queryRows(
    db.pool,
    sql`select c.plant_id, c.category,
        coalesce(sum(c.plant_minor) filter (where c.basis = 'booked'), 0)::bigint as booked,
        coalesce(sum(c.plant_minor) filter (where c.basis = 'estimated'), 0)::bigint as estimate
      from failure_fact f join cost_fact c on c.plant_id = f.plant_id and c.failure_id = f.id
      where ${filterWhere(filter, scope)} group by 1, 2`,
    CategoryCosts,
  );
