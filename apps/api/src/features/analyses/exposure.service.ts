/** Production for the features that compare reports with it. */
import { z } from 'zod';
import type { Period } from '#analysis/calendar/period.ts';
import { queryRows, raw, sql } from '#db/sql.ts';
import type { Asked } from './asked.service.ts';
import { type ExposureDimension, exposureCells, exposureColumns } from './exposure.queries.ts';

const Made = z.object({ plant_id: z.string(), key: z.string().nullable(), terminals: z.number() });
export type Made = z.infer<typeof Made>;

/** Terminals inserted per plant and key of a dimension. */
export function madeBy(asked: Asked, period: Period, dimension: ExposureDimension): Promise<Made[]> {
  const columns = sql`p.plant_id, ${exposureColumns[dimension]} as key, `;
  const cells = exposureCells(asked, period, { dimensions: ['plant', dimension], columns });
  return queryRows(
    asked.db.pool,
    sql`select c.plant_id, c.key, sum(c.terminals)::bigint as terminals from ${cells} group by c.plant_id, c.key`,
    Made,
  );
}

const MadeOn = z.object({ plant_id: z.string(), day: z.string(), terminals: z.number() });
export type MadeOn = z.infer<typeof MadeOn>;

/** Terminals inserted per plant and day. */
export function madeOn(asked: Asked, period: Period): Promise<MadeOn[]> {
  const cells = exposureCells(asked, period, { dimensions: [], columns: raw('p.plant_id, p.day, '), grain: 'day' });
  return queryRows(
    asked.db.pool,
    sql`select c.plant_id, c.day, sum(c.terminals)::bigint as terminals from ${cells} group by c.plant_id, c.day order by c.day`,
    MadeOn,
  );
}
