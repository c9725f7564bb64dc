import { z } from 'zod';
import type { Period } from '#analysis/calendar/period.ts';
import { dimensionColumns } from '#api/platform/dimension-columns.ts';
import { filterWhere } from '#api/platform/filter.ts';
import type { Dimension } from '#contracts/shared/dimension.ts';
import { queryRows, type Sql, sql } from '#db/sql.ts';
import type { Asked } from './asked.service.ts';
import { Exposure, type ExposureDimension, exposureColumns, exposureSums, exposureWhere } from './exposure.queries.ts';
import { type MoneyMeasure, MoneySpread, Sums, spreadColumns, sumColumns } from './sums.ts';

const Key = z.union([z.string(), z.number()]).nullable();
const KeySums = Sums.extend({ key: Key });
export type KeySums = z.infer<typeof KeySums> & Partial<z.infer<typeof MoneySpread>>;

/** Sums per value of a dimension and plant; with the spread of the money where a money measure is asked for. */
export function sumsByKey(
  { db, filter, scope }: Asked,
  dimension: Dimension,
  period: Period,
  measure: MoneyMeasure | null,
): Promise<KeySums[]> {
  const { column } = dimensionColumns[dimension];
  const columns = measure ? sql`${sumColumns}, ${spreadColumns(measure)}` : sumColumns;
  return queryRows(
    db.pool,
    sql`select ${column} as key, ${columns} from failure_fact f
      where ${filterWhere({ ...filter, ...period }, scope)} group by ${column}, f.plant_id`,
    measure ? KeySums.extend(MoneySpread.shape) : KeySums,
  );
}

const KeyExposure = Exposure.extend({ key: Key });
export type KeyExposure = z.infer<typeof KeyExposure>;

/** Production per value of a dimension it is reported by, or all of it under no key. */
export function exposureByKey(
  { db, filter, scope }: Asked,
  dimension: ExposureDimension | null,
  period: Period,
): Promise<KeyExposure[]> {
  const where = exposureWhere(filter, period, scope);
  return queryRows(
    db.pool,
    dimension
      ? sql`select ${exposureColumns[dimension]} as key, ${exposureSums} from production_fact p where ${where}
          group by ${exposureColumns[dimension]}`
      : sql`select null as key, ${exposureSums} from production_fact p where ${where}`,
    KeyExposure,
  );
}

type Named = 'plant' | 'line' | 'housing' | 'terminal' | 'wire' | 'tool' | 'customer';
const names: Record<Named, (ids: readonly string[]) => Sql> = {
  plant: (ids) => sql`select id, code from plant where id = any(${ids}::uuid[])`,
  line: (ids) => sql`select id, code from line where id = any(${ids}::uuid[])`,
  housing: (ids) => sql`select id, code from housing where id = any(${ids}::uuid[])`,
  terminal: (ids) => sql`select id, code from terminal where id = any(${ids}::uuid[])`,
  wire: (ids) => sql`select id, code from wire where id = any(${ids}::uuid[])`,
  tool: (ids) => sql`select id, code from tool where id = any(${ids}::uuid[])`,
  customer: (ids) => sql`select id, code from customer where id = any(${ids}::uuid[])`,
};

/** The codes of bars that are rows of the master data; empty for every other dimension. */
export async function codesOf(
  { db }: Asked,
  dimension: Dimension,
  keys: readonly string[],
): Promise<Map<string, string>> {
  const ids = keys.filter((key) => key !== 'none');
  if (!(dimension in names) || ids.length === 0) return new Map();
  const rows = await queryRows(db.pool, names[dimension as Named](ids), z.object({ id: z.string(), code: z.string() }));
  return new Map(rows.map(({ id, code }) => [id, code]));
}
