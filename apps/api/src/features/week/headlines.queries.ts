import { z } from 'zod';
import type { Period } from '#analysis/calendar/period.ts';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import { cellsOf } from '#api/features/analyses/cells.ts';
import { Sums, sumColumns, summedColumns } from '#api/features/analyses/sums.ts';
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

const weekColumns = [
  ...summedColumns,
  'booked_squared',
  'booked_largest',
  'estimate_squared',
  'estimate_largest',
  'escaped',
  'outside',
  'no_origin',
  'no_evidence',
] as const;
const byCause = sql`f.cause, `;

/** Everything the headlines and gaps count of one period, per plant. */
export function headlineSums(asked: Asked, period: Period): Promise<HeadlineSums[]> {
  const cells = cellsOf(asked, period, { dimensions: ['cause'], ofReport: byCause, ofCell: byCause }, weekColumns);
  return queryRows(
    asked.db.pool,
    sql`select ${sumColumns}, sum(c.booked_squared) as booked_squared, max(c.booked_largest)::bigint as booked_largest,
        sum(c.estimate_squared) as estimate_squared, max(c.estimate_largest)::bigint as estimate_largest,
        sum(c.escaped)::int as escaped, sum(c.outside)::int as outside,
        coalesce(sum(c.reports) filter (where c.cause is null), 0)::int as no_cause,
        sum(c.no_origin)::int as no_origin, sum(c.no_evidence)::int as no_evidence
      from ${cells} group by c.plant_id`,
    HeadlineSums,
  );
}
