import { z } from 'zod';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import { filterWhere } from '#api/platform/filter.ts';
import { Cause } from '#contracts/taxonomy.ts';
import { queryRows, sql } from '#db/sql.ts';

const Escape = z.object({
  id: z.string(),
  number: z.string(),
  plant_id: z.string(),
  cause: Cause.nullable(),
  origin: z.number().nullable(),
  found: z.number(),
  gates_passed: z.number().nullable(),
  terminals: z.number(),
  booked: z.number(),
  estimate: z.number(),
});
export type Escape = z.infer<typeof Escape>;

/** The dearest reports of faults found after the stage that made them, or outside the plant; compared in one currency. */
export const costliestEscapes = ({ db, filter, scope, plants, money }: Asked, limit: number): Promise<Escape[]> =>
  queryRows(
    db.pool,
    sql`select f.id, f.number, f.plant_id, f.cause, f.origin, f.found, f.gates_passed, f.terminals,
        f.booked_minor as booked, f.estimate_minor as estimate
      from failure_fact f
        join unnest(${plants.map(({ id }) => id)}::uuid[], ${plants.map(({ id }) => money.factor(id))}::float8[]) as p (id, factor) on p.id = f.plant_id
      where ${filterWhere(filter, scope)} and f.booked_minor + f.estimate_minor > 0
        and (f.origin < f.found or f.source in ('customer', 'field'))
      order by (f.booked_minor + f.estimate_minor) * p.factor desc, f.id limit ${limit}`,
    Escape,
  );
