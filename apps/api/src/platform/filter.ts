import type { Filter } from '#contracts/shared/filter.ts';
import { type Stage, stageNumber } from '#contracts/taxonomy.ts';
import { join, raw, type Sql, sql } from '#db/sql.ts';
import type { PlantScope } from './actor.ts';
import { searchWhere } from './search.ts';

type Choice = readonly string[] | undefined;

/** One of the values; `none` selects rows where the column is empty. */
function chosen(column: Sql, choice: Choice, cast: Sql, toValue: (word: string) => string | number = String): Sql[] {
  if (!choice?.length) return [];
  const values = choice.filter((word) => word !== 'none').map(toValue);
  const among = sql`${column} = any(${values}::${cast}[])`;
  if (!choice.includes('none')) return [among];
  return [values.length ? sql`(${among} or ${column} is null)` : sql`${column} is null`];
}

const stage = (word: string) => stageNumber(word as Stage);
const uuid = raw('uuid');
const text = raw('text');
const smallint = raw('smallint');
const when = (given: unknown, condition: () => Sql): Sql[] => (given === undefined ? [] : [condition()]);
const either = (wanted: boolean, condition: Sql) => sql`(${condition}) is ${wanted ? raw('true') : raw('not true')}`;

const costWhere = {
  booked: sql`f.booked_minor <> 0`,
  estimated: sql`f.costed and f.booked_minor = 0`,
  none: sql`not f.costed`,
};

/**
 * The condition of the one shared filter over `failure_fact f`, the same for list, count, export and every analysis.
 * `scope` are the plants the asker may see; a plant in the filter narrows it and never widens it.
 */
export function filterWhere(filter: Filter, scope: PlantScope): Sql {
  const conditions = [
    ...(scope === 'all' ? [] : [sql`f.plant_id = any(${[...scope]}::uuid[])`]),
    ...chosen(raw('f.plant_id'), filter.plant, uuid),
    ...when(filter.from, () => sql`f.found_on >= ${filter.from ?? null}::date`),
    ...when(filter.to, () => sql`f.found_on < ${filter.to ?? null}::date`),
    ...chosen(raw('f.line_id'), filter.line, uuid),
    ...chosen(raw('f.station'), filter.station, text),
    ...chosen(raw('f.shift'), filter.shift, text),
    ...chosen(raw('f.source'), filter.source, raw('source')),
    ...chosen(raw('f.found'), filter.found, smallint, stage),
    ...chosen(raw('f.origin'), filter.origin, smallint, stage),
    ...chosen(raw('f.cause'), filter.cause, raw('cause')),
    ...chosen(raw('f.sub_cause'), filter.subCause, text),
    ...chosen(raw('f.housing_id'), filter.housing, uuid),
    ...chosen(raw('f.terminal_id'), filter.terminal, uuid),
    ...chosen(raw('f.wire_id'), filter.wire, uuid),
    ...chosen(raw('f.tool_id'), filter.tool, uuid),
    ...chosen(raw('f.cavity'), filter.cavity, text),
    ...chosen(raw('f.reel_lot'), filter.lot, text),
    ...chosen(raw('f.housing_lot'), filter.housingLot, text),
    ...chosen(raw('f.customer_id'), filter.customer, uuid),
    ...chosen(raw('f.effect'), filter.effect, raw('effect')),
    ...chosen(raw('f.disposition'), filter.disposition, raw('disposition')),
    ...chosen(raw('f.lock_state'), filter.lock, raw('lock_state')),
    ...when(filter.safety, () => either(filter.safety === true, sql`f.safety`)),
    ...when(filter.gates, () => sql`f.gates_passed >= ${filter.gates ?? null}`),
    ...(filter.cost ? [costWhere[filter.cost]] : []),
    ...when(filter.evidence, () => either(filter.evidence === true, sql`f.evidence`)),
    ...when(filter.avoidable, () => either(filter.avoidable === true, sql`f.gate < f.found`)),
    ...when(filter.import, () => sql`f.import_id = ${filter.import ?? null}::uuid`),
    ...(filter.q ? [searchWhere(filter.q)] : []),
  ];
  return conditions.length ? join(conditions, ' and ') : sql`true`;
}
