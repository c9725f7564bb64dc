import { z } from 'zod';
import { filterWhere } from '#api/platform/filter.ts';
import { CostCategory } from '#contracts/taxonomy.ts';
import { queryRows, sql } from '#db/sql.ts';
import type { Asked } from './asked.service.ts';
import { cellsOf } from './cells.ts';
import { Sums, sumColumns, summedColumns } from './sums.ts';

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

const costColumns = [
  'standard',
  'priced',
  'log_cost',
  'log_cost_squared',
  'late',
  'avoidable',
  'no_cause',
  'sorted_without_origin',
  'late_without_cost',
  'late_without_standard',
] as const;

/**
 * Per found stage and plant: sums; booked cost per terminal as sums of logarithms over reports with a booked cost above 0
 * (kept in millionths, so that sums are whole numbers); and what was found later than the first gate able to see it.
 */
export function costsByFound(asked: Asked): Promise<FoundCosts[]> {
  const key = sql`f.found, `;
  const cells = cellsOf(asked, asked.period, { dimensions: ['found'], ofReport: key, ofCell: key }, [
    ...summedColumns,
    ...costColumns,
  ]);
  return queryRows(
    asked.db.pool,
    sql`select c.found, ${sumColumns}, sum(c.standard)::bigint as standard, sum(c.priced)::int as priced,
        sum(c.log_cost)::float8 / 1e6 as sum_log, sum(c.log_cost_squared) / 1e12 as sum_log_squares, sum(c.late)::int as late,
        sum(c.avoidable)::bigint as avoidable, sum(c.no_cause)::int as no_cause, sum(c.sorted_without_origin)::int as no_origin,
        sum(c.late_without_cost)::int as no_cost, sum(c.late_without_standard)::int as no_standard_cost
      from ${cells} group by c.found, c.plant_id`,
    FoundCosts,
  );
}

const CategoryCosts = z.object({
  plant_id: z.string(),
  category: CostCategory,
  booked: z.number(),
  estimate: z.number(),
});
export type CategoryCosts = z.infer<typeof CategoryCosts>;

/** Cost items by category. A report without any, which has a standard cost at most, is left aside before the join. */
export const costsByCategory = ({ db, filter, scope }: Asked): Promise<CategoryCosts[]> =>
  queryRows(
    db.pool,
    sql`select c.plant_id, c.category,
        coalesce(sum(c.plant_minor) filter (where c.basis = 'booked'), 0)::bigint as booked,
        coalesce(sum(c.plant_minor) filter (where c.basis = 'estimated'), 0)::bigint as estimate
      from failure_fact f join cost_fact c on c.plant_id = f.plant_id and c.failure_id = f.id
      where ${filterWhere(filter, scope)} and not f.standard_only group by 1, 2`,
    CategoryCosts,
  );
