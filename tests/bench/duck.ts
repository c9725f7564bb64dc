/** The same rows in DuckDB's memory, in its own best types, for the same questions. */
import { type DuckDBConnection, DuckDBInstance } from '@duckdb/node-api';
import { causes, costCategories, dispositions, sources } from '#contracts/taxonomy.ts';
import { costColumns, productionColumns, reportColumns } from './rows.ts';

const typeOf = (column: string) => {
  if (/^id$|_id$/.test(column)) return 'UUID';
  if (/_on$|^day$/.test(column)) return 'DATE';
  if (/_minor$/.test(column)) return 'BIGINT';
  if (['found', 'origin', 'gate', 'gates_passed'].includes(column)) return 'UTINYINT';
  if (/^quantity|^cost_items|^units|^terminals/.test(column)) return 'INTEGER';
  return 'VARCHAR';
};
const read = (file: string, columns: string) => {
  const types = columns.split(', ').map((column) => `'${column}': '${typeOf(column)}'`);
  return `read_csv('${file}', delim='\t', header=false, quote='', escape='', nullstr='\\N', columns={${types.join(', ')}})`;
};
const list = (words: readonly string[]) => words.map((word) => `'${word}'`).join(', ');

export interface Files {
  reports: string;
  costs: string;
  production: string;
}

export async function openDuck(files: Files, threads: number): Promise<DuckDBConnection> {
  const instance = await DuckDBInstance.create(':memory:', { threads: String(threads) });
  const duck = await instance.connect();
  for (const statement of [
    `create type cause as enum (${list(causes)})`,
    `create type source as enum (${list(sources)})`,
    `create type disposition as enum (${list(dispositions)})`,
    `create type category as enum (${list(costCategories)})`,
    `create table failure_fact as select id, plant_id, found_on, built_on, line_id, found, origin, cause::cause as cause, source::source as source,
      housing_id, terminal_id, tool_id, disposition::disposition as disposition, safety = 'true' as safety,
      quantity_found as terminals, booked_minor, case when cost_items = 0 then standard_minor else 0 end as estimate_minor,
      true as costed, cost_items = 0 as standard_only, gate, gate_minor, gates_passed, proof is not null as evidence, number, reel_lot, housing_lot,
      case when cavities like '%,%' then 'several' else trim(cavities, '{}') end as cavity
      from ${read(files.reports, reportColumns)} where voided_at is null order by found_on`,
    `create table cost_fact as select plant_id, failure_id, category::category as category, basis, plant_minor
      from ${read(files.costs, costColumns)}`,
    `create table production_fact as select plant_id, day, line_id, housing_id, terminal_id, units, terminals
      from ${read(files.production, productionColumns)} order by day`,
  ])
    await duck.run(statement);
  return duck;
}
