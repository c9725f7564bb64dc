import { z } from 'zod';
import type { Period } from '#analysis/calendar/period.ts';
import type { PlantScope } from '#api/platform/actor.ts';
import { dimensionColumns } from '#api/platform/dimension-columns.ts';
import { isAmong, isNoneOf } from '#api/platform/filter.ts';
import type { Dimension } from '#contracts/shared/dimension.ts';
import { exceptionsOf, type Filter } from '#contracts/shared/filter.ts';
import { join, raw, type Sql, sql } from '#db/sql.ts';
import type { Asked } from './asked.service.ts';
import { carries, fieldsOf, type Grain, splitPeriod } from './carriers.ts';

/** The dimensions that production is reported by. */
export const exposureColumns = {
  plant: raw('p.plant_id'),
  line: raw('p.line_id'),
  housing: raw('p.housing_id'),
  terminal: raw('p.terminal_id'),
} as const satisfies Partial<Record<Dimension, Sql>>;
export type ExposureDimension = keyof typeof exposureColumns;
export const isExposureDimension = (dimension: Dimension): dimension is ExposureDimension =>
  dimension in exposureColumns;

const places = (Object.keys(exposureColumns) as ExposureDimension[]).map(
  (dimension) => [dimension, { ...dimensionColumns[dimension], column: exposureColumns[dimension] }] as const,
);

export const Exposure = z.object({ units: z.number(), terminals: z.number() });
export type Exposure = z.infer<typeof Exposure>;
export const exposureSums = sql`sum(c.units)::bigint as units, sum(c.terminals)::bigint as terminals`;

/** The part of the filter that narrows production, over `production_fact p`. */
function exposureWhere(filter: Filter, { from, to }: Period, scope: PlantScope): Sql {
  const exceptions = exceptionsOf(filter);
  return join(
    [
      sql`p.day >= ${from}::date and p.day < ${to}::date`,
      ...(scope === 'all' ? [] : [sql`p.plant_id = any(${[...scope]}::uuid[])`]),
      ...places.flatMap(([dimension, place]) => {
        const words = filter[dimension];
        const excepted = exceptions.get(dimension);
        return [...(words?.length ? [isAmong(place, words)] : []), ...(excepted ? [isNoneOf(place, excepted)] : [])];
      }),
    ],
    ' and ',
  );
}

interface Carrier {
  grain: Grain;
  dimensions: readonly ExposureDimension[];
  rows: Sql;
}
const carriers: readonly Carrier[] = [
  { grain: 'day', dimensions: ['plant'], rows: raw('production_day_fact p where') },
  {
    grain: 'month',
    dimensions: ['plant', 'line'],
    rows: raw("production_month_fact p where p.dimension = 'line' and"),
  },
  {
    grain: 'month',
    dimensions: ['plant', 'housing'],
    rows: raw("production_month_fact p where p.dimension = 'housing' and"),
  },
  {
    grain: 'month',
    dimensions: ['plant', 'terminal'],
    rows: raw("production_month_fact p where p.dimension = 'terminal' and"),
  },
];

/** Production as rows `c` to be summed: whole days or months from the roll-up that carries what is asked, the rest row by row. */
export function exposureCells(
  { filter, scope }: Asked,
  period: Period,
  keys: { dimensions: readonly ExposureDimension[]; columns: Sql; grain?: Grain },
): Sql {
  const fields = [...fieldsOf(filter).filter((field) => field in exposureColumns), ...keys.dimensions];
  const carrier = carriers.find(
    ({ grain, dimensions }) => carries(dimensions, fields) && (keys.grain === undefined || keys.grain === grain),
  );
  const split = carrier && splitPeriod(period, carrier.grain);
  const from = (rows: Sql, part: Period) =>
    sql`select ${keys.columns}p.units, p.terminals from ${rows} ${exposureWhere(filter, part, scope)}`;
  const reported = raw('production_fact p where');
  if (!split) return sql`(${from(reported, period)}) c`;
  const parts = [from(carrier.rows, split.whole), ...split.ends.map((end) => from(reported, end))];
  return sql`(${join(parts, ' union all ')}) c`;
}

/** Whether the filter narrows reports by something that production is not reported by. */
export const isWider = (filter: Filter): boolean => fieldsOf(filter).some((field) => !(field in exposureColumns));
