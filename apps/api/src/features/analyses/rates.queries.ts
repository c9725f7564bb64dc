import { z } from 'zod';
import { addDays, type Weekday } from '#analysis/calendar/day.ts';
import { queryRows, raw, type Sql, sql } from '#db/sql.ts';
import type { Asked } from './asked.service.ts';
import { cellsOf } from './cells.ts';
import { Exposure, exposureCells, exposureSums } from './exposure.queries.ts';
import { Sums, sumColumns, summedColumns } from './sums.ts';

export type Bucket = 'week' | 'month';

/** The first day of the bucket that a day lies in; weeks by whole sevens from a first weekday before all data. */
function bucketOf(day: Sql, bucket: Bucket, firstWeekday: Weekday): Sql {
  if (bucket === 'month') return sql`date_trunc('month', ${day}::timestamp)::date`;
  const anchor = addDays('1999-12-26', firstWeekday);
  return sql`(${day} - (${day} - ${anchor}::date) % 7)`;
}

const BucketSums = Sums.extend({ bucket: z.string() });
export type BucketSums = z.infer<typeof BucketSums>;

export function sumsByBucket(asked: Asked, bucket: Bucket): Promise<BucketSums[]> {
  const key = sql`${bucketOf(raw('f.found_on'), bucket, asked.own.firstWeekday)} as bucket, `;
  const cells = cellsOf(
    asked,
    asked.period,
    { dimensions: [], ofReport: key, ofCell: key, grain: 'day' },
    summedColumns,
  );
  return queryRows(
    asked.db.pool,
    sql`select c.bucket, ${sumColumns} from ${cells} group by c.bucket, c.plant_id`,
    BucketSums,
  );
}

const BucketExposure = Exposure.extend({ bucket: z.string(), plant_id: z.string() });
export type BucketExposure = z.infer<typeof BucketExposure>;

export function exposureByBucket(asked: Asked, bucket: Bucket): Promise<BucketExposure[]> {
  const columns = sql`${bucketOf(raw('p.day'), bucket, asked.own.firstWeekday)} as bucket, p.plant_id, `;
  const cells = exposureCells(asked, asked.period, { dimensions: [], columns, grain: 'day' });
  return queryRows(
    asked.db.pool,
    sql`select c.bucket, c.plant_id, ${exposureSums} from ${cells} group by c.bucket, c.plant_id`,
    BucketExposure,
  );
}
