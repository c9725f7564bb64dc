import { z } from 'zod';
import { CauseChange, Photo, Report } from '#contracts/failures.ts';
import { stageOf } from '#contracts/taxonomy.ts';
import { type Sql, sql } from '#db/sql.ts';

const stage = z.int().transform(stageOf);
const instant = z.coerce.date().transform((at) => at.toISOString());

/** A report as the database gives it: stages are numbers there, instants dates. Parsing makes it the wire's. */
export const ReportRecord = Report.extend({
  reportedAt: instant,
  foundAt: instant.nullable(),
  found: stage,
  origin: stage.nullable(),
  sortedAt: instant.nullable(),
  voidedAt: instant.nullable(),
  photos: z.array(Photo.extend({ addedAt: instant })),
  causeChanges: z.array(CauseChange.extend({ at: instant, origin: stage.nullable() })),
});

// the counts on the report spare most reads the look into the two tables
const costItems = sql`case when f.cost_items = 0 then '[]'::json else (select coalesce(json_agg(json_build_object('id', c.id, 'category', c.category, 'basis', c.basis,
    'incurredOn', c.incurred_on, 'amountMinor', c.amount_minor, 'currency', c.currency, 'plantMinor', c.plant_minor,
    'rateOn', c.rate_on, 'minutes', c.minutes, 'note', c.note) order by c.id), '[]')
  from cost_item c where c.plant_id = f.plant_id and c.failure_id = f.id and c.removed_at is null) end`;
const photos = sql`case when f.photo_count = 0 then '[]'::json else (select coalesce(json_agg(json_build_object('id', h.id, 'width', h.width, 'height', h.height,
    'bytes', h.bytes, 'caption', h.caption, 'addedAt', h.added_at) order by h.id), '[]')
  from photo h where h.plant_id = f.plant_id and h.failure_id = f.id and h.removed_at is null) end`;
const causeChanges = sql`(select coalesce(json_agg(json_build_object('id', g.id, 'at', g.at, 'actor', g.actor,
    'cause', g.cause, 'subCause', g.sub_cause, 'origin', g.origin, 'proof', g.proof, 'reason', g.reason) order by g.id desc), '[]')
  from cause_change g where g.plant_id = f.plant_id and g.failure_id = f.id)`;
const nameOf = (column: Sql) =>
  sql`coalesce((select name from person where id = ${column}), (select name from api_token where id = ${column}))`;

/** Reads one report by its id, voided or not. */
export const reportSql = (id: string): Sql => sql`
  select f.id, f.plant_id as "plantId", f.number, f.external_ref as "externalRef", f.reported_at as "reportedAt",
    ${nameOf(sql`f.reported_by`)} as "reportedBy", f.found_on::text as "foundOn", f.found_at as "foundAt",
    f.built_on::text as "builtOn", f.line_id as "lineId", f.station, f.shift, f.stage_id as "stageId", f.found, f.source,
    f.housing_id as "housingId", f.terminal_id as "terminalId", f.wire_id as "wireId",
    array_remove(f.tool_id || f.other_tool_ids, null) as "toolIds", f.fixture_position as "fixturePosition", f.cavities,
    f.reel_lot as "reelLot", f.housing_lot as "housingLot", f.serial_from as "serialFrom", f.serial_to as "serialTo",
    f.customer_id as "customerId", f.customer_ref as "customerRef", f.effect, f.quantity_found as "quantityFound",
    f.quantity_inspected as "quantityInspected", f.lock_state as "lockState", f.disposition, f.safety, f.note, f.cause,
    f.sub_cause as "subCause", f.origin, f.proof, f.sorted_at as "sortedAt", ${nameOf(sql`f.sorted_by`)} as "sortedBy",
    f.gates_passed as "gatesPassed", f.import_id as "importId", f.import_line as "importLine",
    f.voided_at as "voidedAt", f.void_reason as "voidReason", f.version,
    json_build_object('currency', p.currency, 'bookedMinor', f.booked_minor, 'estimatedMinor', f.estimated_minor,
      'standardMinor', case when f.cost_items = 0 then f.standard_minor end) as cost,
    ${costItems} as "costItems", ${photos} as photos, ${causeChanges} as "causeChanges"
  from failure f join plant p on p.id = f.plant_id where f.id = ${id}::uuid`;

export const ReadRecord = ReportRecord.extend({ hiddenFrom: z.array(z.string()) });
/** Reads one report by its id, and who has a second opinion on it to give first. */
export const readSql = (id: string): Sql => sql`
  select r.*, array(select o.person_id from opinion_open o where o.plant_id = r."plantId" and o.failure_id = r.id) as "hiddenFrom"
  from (${reportSql(id)}) r`;
