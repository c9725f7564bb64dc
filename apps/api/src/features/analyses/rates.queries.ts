import { z } from 'zod';
import { addDays, type Weekday } from '#analysis/calendar/day.ts';
import { filterWhere } from '#api/platform/filter.ts';
import { queryRows, raw, type Sql, sql } from '#db/sql.ts';
import type { Asked } from './asked.service.ts';
import { Exposure, exposureSums, exposureWhere } from './exposure.queries.ts';
import { Sums, sumColumns } from './sums.ts';

export type Bucket = 'week' | 'month';

/** The first day of the bucket that a day lies in; weeks by whole sevens from a first weekday before all data. */
function bucketOf(day: Sql, bucket: Bucket, firstWeekday: Weekday): Sql {
  if (bucket === 'month') return sql`date_trunc('month', ${day}::timestamp)::date`;
  const anchor = addDays('1999-12-26', firstWeekday);
  return sql`(${day} - (${day} - ${anchor}::date) % 7)`;
}

const BucketSums = Sums.extend({ bucket: z.string() });
export type BucketSums = z.infer<typeof BucketSums>;

export const sumsByBucket = ({ db, filter, scope, own }: Asked, bucket: Bucket): Promise<BucketSums[]> =>
  queryRows(
    db.pool,
    sql`select ${bucketOf(raw('f.found_on'), bucket, own.firstWeekday)} as bucket, ${sumColumns}
      from failure_fact f where ${filterWhere(filter, scope)} group by 1, 2`,
    BucketSums,
  );

const BucketExposure = Exposure.extend({ bucket: z.string(), plant_id: z.string() });
export type BucketExposure = z.infer<typeof BucketExposure>;

export const exposureByBucket = (
  { db, filter, scope, period, own }: Asked,
  bucket: Bucket,
): Promise<BucketExposure[]> =>
  queryRows(
    db.pool,
    sql`select ${bucketOf(raw('p.day'), bucket, own.firstWeekday)} as bucket, p.plant_id, ${exposureSums}
      from production_fact p where ${exposureWhere(filter, period, scope)} group by 1, 2`,
    BucketExposure,
  );
