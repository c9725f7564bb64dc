import type { Dimension } from '#contracts/shared/dimension.ts';
import { exceptionsOf, type Filter } from '#contracts/shared/filter.ts';
import { join, raw, type Sql, sql } from '#db/sql.ts';
import type { PlantScope } from './actor.ts';
import { type DimensionColumn, dimensionColumns } from './dimension-columns.ts';
import { type Known, nothingKnown, searchWhere } from './search.ts';

type Words = readonly string[];

const valuesOf = ({ toValue, free }: DimensionColumn, words: Words) =>
  words.filter((word) => free || word !== 'none').map(toValue);

/** The column holds one of the words; `none` selects rows where it is empty. */
export function isAmong(place: DimensionColumn, words: Words): Sql {
  const { column, cast } = place;
  const values = valuesOf(place, words);
  const among = sql`${column} = any(${values}::${cast}[])`;
  if (!words.includes('none')) return among;
  return values.length ? sql`(${among} or ${column} is null)` : sql`${column} is null`;
}

/** The column holds none of the words; the exact opposite of `isAmong`. */
export function isNoneOf(place: DimensionColumn, words: Words): Sql {
  const { column, cast } = place;
  const values = valuesOf(place, words);
  const beyond = sql`${column} <> all(${values}::${cast}[])`;
  return words.includes('none') ? sql`(${column} is not null and ${beyond})` : sql`(${column} is null or ${beyond})`;
}

const dimensions = Object.entries(dimensionColumns) as [Dimension, DimensionColumn][];
const when = (given: unknown, condition: () => Sql): Sql[] => (given === undefined ? [] : [condition()]);
const either = (wanted: boolean, condition: Sql) => sql`(${condition}) is ${wanted ? raw('true') : raw('not true')}`;

const fixturePosition = { ...dimensionColumns.station, column: sql`f.fixture_position` };

const names = (cavities: Words) =>
  sql`exists (select from failure n where n.id = f.id and n.plant_id = f.plant_id and n.cavities && ${cavities}::text[])`;

const costWhere = {
  booked: sql`f.booked_minor <> 0`,
  estimated: sql`f.estimate_minor <> 0`,
  none: sql`not f.costed`,
};

/**
 * The condition of the one shared filter over `failure_fact f`, the same for list, count, export and every analysis.
 * `scope` are the plants the asker may see; a plant in the filter narrows it and never widens it. `known`, from `lookInto`,
 * makes a search quick; the answer is the same without it.
 */
export function filterWhere(filter: Filter, scope: PlantScope, known: Known = nothingKnown): Sql {
  const conditions = [
    ...(scope === 'all' ? [] : [sql`f.plant_id = any(${[...scope]}::uuid[])`]),
    ...when(filter.from, () => sql`f.found_on >= ${filter.from ?? null}::date`),
    ...when(filter.to, () => sql`f.found_on < ${filter.to ?? null}::date`),
    ...when(filter.builtFrom, () => sql`coalesce(f.built_on, f.found_on) >= ${filter.builtFrom ?? null}::date`),
    ...when(filter.builtTo, () => sql`coalesce(f.built_on, f.found_on) < ${filter.builtTo ?? null}::date`),
    ...dimensions.flatMap(([dimension, place]) => {
      const words = filter[dimension];
      return words?.length ? [isAmong(place, words)] : [];
    }),
    ...[...exceptionsOf(filter)].map(([dimension, words]) => isNoneOf(dimensionColumns[dimension], words)),
    ...(filter.disposition?.length ? [sql`f.disposition = any(${filter.disposition}::disposition[])`] : []),
    ...(filter.lock?.length ? [sql`f.lock_state = any(${filter.lock}::lock_state[])`] : []),
    ...(filter.fixturePosition?.length ? [isAmong(fixturePosition, filter.fixturePosition)] : []),
    ...(filter.cavityNamed?.length ? [names(filter.cavityNamed)] : []),
    ...when(filter.safety, () => either(filter.safety === true, sql`f.safety`)),
    ...when(filter.gates, () => sql`f.gates_passed >= ${filter.gates ?? null}`),
    ...(filter.cost ? [costWhere[filter.cost]] : []),
    ...when(filter.evidence, () => either(filter.evidence === true, sql`f.evidence`)),
    ...when(filter.avoidable, () => either(filter.avoidable === true, sql`f.gate < f.found`)),
    ...when(filter.built, () => either(filter.built === true, sql`f.built_on is not null`)),
    ...when(filter.import, () => sql`f.import_id = ${filter.import ?? null}::uuid`),
    ...(filter.q ? [searchWhere(filter.q, known)] : []),
  ];
  return conditions.length ? join(conditions, ' and ') : sql`true`;
}
