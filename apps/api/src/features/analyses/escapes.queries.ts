import { z } from 'zod';
import { queryRows, sql } from '#db/sql.ts';
import type { Asked } from './asked.service.ts';
import { cellsOf } from './cells.ts';
import { Sums, sumColumns, summedColumns } from './sums.ts';

const CellSums = Sums.extend({ origin: z.number().nullable(), found: z.number(), passed_two: z.boolean() });
export type CellSums = z.infer<typeof CellSums>;

/** Sums per origin and found stage, apart by whether two or more gates were passed. */
export function sumsByCell(asked: Asked): Promise<CellSums[]> {
  const cells = cellsOf(
    asked,
    asked.period,
    {
      dimensions: ['origin', 'found'],
      ofReport: sql`f.origin, f.found, coalesce(f.gates_passed >= 2, false) as passed_two, `,
      ofCell: sql`f.origin, f.found, f.passed_two, `,
    },
    summedColumns,
  );
  return queryRows(
    asked.db.pool,
    sql`select c.origin, c.found, c.passed_two, ${sumColumns} from ${cells} group by 1, 2, 3, c.plant_id`,
    CellSums,
  );
}
