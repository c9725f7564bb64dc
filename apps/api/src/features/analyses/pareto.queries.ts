import { z } from 'zod';
import type { Period } from '#analysis/calendar/period.ts';
import { dimensionColumns } from '#api/platform/dimension-columns.ts';
import type { Dimension } from '#contracts/shared/dimension.ts';
import { empty, queryRows, type Sql, sql } from '#db/sql.ts';
import type { Asked } from './asked.service.ts';
import { cellsOf } from './cells.ts';
import { Exposure, type ExposureDimension, exposureCells, exposureColumns, exposureSums } from './exposure.queries.ts';
import { type MoneyMeasure, MoneySpread, Sums, spreads, sumColumns, summedColumns } from './sums.ts';

const Key = z.union([z.string(), z.number()]).nullable();
const KeySums = Sums.extend({ key: Key });
export type KeySums = z.infer<typeof KeySums> & Partial<z.infer<typeof MoneySpread>>;

/** Sums per value of a dimension and plant; with the spread of the money where a money measure is asked for. */
export function sumsByKey(
  asked: Asked,
  dimension: Dimension,
  period: Period,
  measure: MoneyMeasure | null,
): Promise<KeySums[]> {
  const key = sql`${dimensionColumns[dimension].column} as key, `;
  const spread = measure && spreads[measure];
  const cells = cellsOf(asked, period, { dimensions: [dimension], ofReport: key, ofCell: key }, [
    ...summedColumns,
    ...(spread ? spread.columns : []),
  ]);
  return queryRows(
    asked.db.pool,
    sql`select c.key, ${sumColumns}${spread ? sql`, ${spread.sums}` : empty} from ${cells} group by c.key, c.plant_id`,
    spread ? KeySums.extend(MoneySpread.shape) : KeySums,
  );
}

const KeyExposure = Exposure.extend({ key: Key });
export type KeyExposure = z.infer<typeof KeyExposure>;

/** Production per value of a dimension it is reported by, or all of it under no key. */
export function exposureByKey(
  asked: Asked,
  dimension: ExposureDimension | null,
  period: Period,
): Promise<KeyExposure[]> {
  const key = dimension ? sql`${exposureColumns[dimension]} as key, ` : sql`null::uuid as key, `;
  const cells = exposureCells(asked, period, { dimensions: dimension ? [dimension] : [], columns: key });
  return queryRows(asked.db.pool, sql`select c.key, ${exposureSums} from ${cells} group by c.key`, KeyExposure);
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
