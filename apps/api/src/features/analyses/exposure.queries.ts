import { z } from 'zod';
import type { Period } from '#analysis/calendar/period.ts';
import type { PlantScope } from '#api/platform/actor.ts';
import { dimensionColumns } from '#api/platform/dimension-columns.ts';
import { isAmong, isNoneOf } from '#api/platform/filter.ts';
import type { Dimension } from '#contracts/shared/dimension.ts';
import { exceptionsOf, type Filter } from '#contracts/shared/filter.ts';
import { join, raw, type Sql, sql } from '#db/sql.ts';

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
export const exposureSums = sql`coalesce(sum(p.units), 0)::bigint as units, coalesce(sum(p.terminals), 0)::bigint as terminals`;

/** The part of the filter that narrows production, over `production_fact p`. */
export function exposureWhere(filter: Filter, { from, to }: Period, scope: PlantScope): Sql {
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

const narrowing: readonly string[] = ['from', 'to', 'currency', ...Object.keys(exposureColumns)];

/** Whether the filter narrows reports by something that production is not reported by. */
export const isWider = (filter: Filter): boolean =>
  Object.entries(filter).some(([field, value]) => {
    if (value === undefined || (Array.isArray(value) && value.length === 0)) return false;
    if (field === 'except')
      return [...exceptionsOf(filter).keys()].some((dimension) => !isExposureDimension(dimension));
    return !narrowing.includes(field);
  });
