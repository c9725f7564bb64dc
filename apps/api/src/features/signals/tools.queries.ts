import { z } from 'zod';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import { filterWhere } from '#api/platform/filter.ts';
import { queryRows, sql } from '#db/sql.ts';

const Row = z.object({
  plant_id: z.string(),
  tool_id: z.string(),
  reports: z.number(),
  terminals: z.array(z.string()),
});
export type CountedTool = z.infer<typeof Row>;

/** Reports that name a tool first, and the terminals that they name beside it. */
export const countTools = ({ db, filter, scope }: Asked): Promise<CountedTool[]> =>
  queryRows(
    db.pool,
    sql`select c.plant_id, c.tool_id, sum(c.reports)::int as reports, coalesce(array_agg(c.terminal_id) filter (where c.terminal_id is not null), '{}') as terminals
      from (select f.plant_id, f.tool_id, f.terminal_id, count(*) as reports from failure_fact f
        where f.tool_id is not null and ${filterWhere(filter, scope)} group by f.plant_id, f.tool_id, f.terminal_id) c
      group by c.plant_id, c.tool_id`,
    Row,
  );
