import { z } from 'zod';
import type { PlantScope } from '#api/platform/actor.ts';
import { decodeCursor, toPage } from '#api/platform/cursor.ts';
import { filterWhere } from '#api/platform/filter.ts';
import { lookInto } from '#api/platform/search.ts';
import { ReportRow } from '#contracts/failures.ts';
import { exceptionsOf, type Filter } from '#contracts/shared/filter.ts';
import type { PageQuery } from '#contracts/shared/paging.ts';
import { Day, Id } from '#contracts/shared/scalars.ts';
import { stageOf } from '#contracts/taxonomy.ts';
import type { Database } from '#db/client.ts';
import { empty, queryOne, queryRows, type Sql, sql } from '#db/sql.ts';

const stage = z.int().transform(stageOf);

/** A line of the list as the database gives it. */
export const ListRecord = ReportRow.extend({
  reportedAt: z.date().transform((at) => at.toISOString()),
  found: stage,
  origin: stage.nullable(),
});

/** Lines of the list, newest found first. `selected` yields id, plant_id and found_on of the reports wanted. */
const rowsOf = (selected: Sql): Sql => sql`
  select f.id, f.plant_id as "plantId", p.code as "plantCode", f.number, f.found_on::text as "foundOn",
    f.reported_at as "reportedAt", l.code as "lineCode", f.station, f.shift, f.found, f.source,
    h.code as "housingCode", t.code as "terminalCode", w.code as "wireCode", o.code as "toolCode", f.cavities,
    f.reel_lot as "reelLot", f.housing_lot as "housingLot", c.code as "customerCode", f.effect,
    f.quantity_found as "quantityFound", f.quantity_inspected as "quantityInspected", f.lock_state as "lockState",
    f.disposition, f.safety, f.cause, f.sub_cause as "subCause", f.origin, f.photo_count as "photoCount", f.note,
    json_build_object('currency', p.currency, 'bookedMinor', f.booked_minor, 'estimatedMinor', f.estimated_minor,
      'standardMinor', case when f.cost_items = 0 then f.standard_minor end) as cost
  from (${selected}) s
  join failure f on f.id = s.id and f.plant_id = s.plant_id
  join plant p on p.id = f.plant_id
  left join line l on l.id = f.line_id
  left join housing h on h.id = f.housing_id
  left join terminal t on t.id = f.terminal_id
  left join wire w on w.id = f.wire_id
  left join tool o on o.id = f.tool_id
  left join customer c on c.id = f.customer_id
  order by s.found_on desc, s.id desc`;

const whereOf = async (db: Database, filter: Filter, scope: PlantScope): Promise<Sql> =>
  filterWhere(filter, scope, filter.q ? await lookInto(db, filter.q) : undefined);

const chosen = (where: Sql): Sql => sql`select f.id, f.plant_id, f.found_on from failure_fact f where ${where}`;

export async function listReports(db: Database, scope: PlantScope, { cursor, limit, ...filter }: Filter & PageQuery) {
  const after = decodeCursor(cursor, z.tuple([Day, Id]));
  const beyond = after ? sql`and (f.found_on, f.id) < (${after[0]}::date, ${after[1]}::uuid)` : empty;
  const where = await whereOf(db, filter, scope);
  const page = sql`${chosen(where)} ${beyond} order by f.found_on desc, f.id desc limit ${limit + 1}`;
  const rows = await queryRows(db.pool, rowsOf(page), ListRecord);
  return toPage(rows, limit, (row) => [row.foundOn, row.id]);
}

/** The whole filtered list, for the export. */
export const everyRow = async (db: Database, filter: Filter, scope: PlantScope): Promise<Sql> =>
  rowsOf(chosen(await whereOf(db, filter, scope)));

const Count = z.object({ reports: z.int(), terminals: z.int() });
const dimensionsByDay = new Set<string>(['cause', 'plant']);
/** The roll-up by day knows no more than these, and counts the same reports. */
const countedByDay = (filter: Filter): boolean =>
  Object.entries(filter).every(
    ([name, value]) =>
      value === undefined || name === 'from' || name === 'to' || name === 'except' || dimensionsByDay.has(name),
  ) && [...exceptionsOf(filter).keys()].every((name) => dimensionsByDay.has(name));

export async function countReports(db: Database, scope: PlantScope, filter: Filter): Promise<z.infer<typeof Count>> {
  const where = await whereOf(db, filter, scope);
  const question = countedByDay(filter)
    ? sql`select coalesce(sum(f.reports), 0) as reports, coalesce(sum(f.terminals), 0)::bigint as terminals
        from failure_day_fact f where ${where}`
    : sql`select count(*) as reports, coalesce(sum(f.terminals), 0) as terminals from failure_fact f where ${where}`;
  return (await queryOne(db.pool, question, Count)) ?? { reports: 0, terminals: 0 };
}
