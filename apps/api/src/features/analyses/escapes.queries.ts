import { z } from 'zod';
import { filterWhere } from '#api/platform/filter.ts';
import { queryRows, sql } from '#db/sql.ts';
import type { Asked } from './asked.service.ts';
import { Sums, sumColumns } from './sums.ts';

const CellSums = Sums.extend({ origin: z.number().nullable(), found: z.number(), passed_two: z.boolean() });
export type CellSums = z.infer<typeof CellSums>;

/** Sums per origin and found stage, apart by whether two or more gates were passed. */
export const sumsByCell = ({ db, filter, scope }: Asked): Promise<CellSums[]> =>
  queryRows(
    db.pool,
    sql`select f.origin, f.found, coalesce(f.gates_passed >= 2, false) as passed_two, ${sumColumns}
      from failure_fact f where ${filterWhere(filter, scope)} group by 1, 2, 3, f.plant_id`,
    CellSums,
  );
