import { z } from 'zod';
import { Day } from '#contracts/shared/scalars.ts';
import { type Sql, sql } from '#db/sql.ts';

export const AlikeRow = z.object({ id: z.string(), number: z.string(), foundOn: Day, terminals: z.int() });

/** Answers that people took on a report, as one comparable text. */
const taken = (alias: 'f' | 'o') => {
  const own =
    alias === 'f'
      ? sql`g.plant_id = f.plant_id and g.failure_id = f.id`
      : sql`g.plant_id = o.plant_id and g.failure_id = o.id`;
  return sql`(select string_agg(g.code || '=' || g.answer, ',' order by g.code) from finding g where ${own})`;
};

/** Unsorted reports of the same plant within a year that share tool, lots and findings with one report, newest first. */
export const alikeSql = (plantId: string, id: string): Sql => sql`
  select o.id, o.number, o.found_on::text as "foundOn", o.quantity_found as terminals
  from failure f join failure o on o.plant_id = f.plant_id and o.id <> f.id and o.voided_at is null and o.cause is null
    and o.found_on >= f.found_on - 365 and o.found_on <= f.found_on + 365
    and o.tool_id is not distinct from f.tool_id and o.reel_lot is not distinct from f.reel_lot and o.housing_lot is not distinct from f.housing_lot
  where f.plant_id = ${plantId}::uuid and f.id = ${id}::uuid and (f.tool_id is not null or f.reel_lot is not null or f.housing_lot is not null)
    and ${taken('o')} is not distinct from ${taken('f')}
  order by o.found_on desc, o.id desc limit 200`;
