import { z } from 'zod';
import { Containment } from '#contracts/containment.ts';
import { PlantTold, SortingResult } from '#contracts/containment-parts.ts';
import { type Sql, sql } from '#db/sql.ts';

const instant = z.coerce.date().transform((at) => at.toISOString());
const Place = z.object({ place: z.string(), quantity: z.int(), note: z.string().nullable(), statedAt: instant });

/** A containment as stored; population and places are computed from it. */
export const StoredContainment = Containment.omit({ population: true, places: true }).extend({
  cleanAt: instant.nullable(),
  createdAt: instant,
  closedAt: instant.nullable(),
  stated: z.array(Place),
  sortings: z.array(SortingResult.extend({ at: instant, withdrawnAt: instant.nullable() })),
  plants: z.array(PlantTold.extend({ toldAt: instant, seenAt: instant.nullable(), answeredAt: instant.nullable() })),
});
export type StoredContainment = z.infer<typeof StoredContainment>;

const nameOf = (column: Sql) =>
  sql`coalesce((select name from person where id = ${column}), (select name from api_token where id = ${column}))`;
const names = sql`(select coalesce(json_object_agg(n.id, n.code), '{}') from (
    select id, code from housing where id = any(c.housing_ids) union all select id, code from terminal where id = any(c.terminal_ids)
    union all select id, code from line where id = any(c.line_ids) union all select id, code from tool where id = any(c.tool_ids)) n)`;
const stated = sql`(select coalesce(json_agg(json_build_object('place', s.place, 'quantity', s.quantity, 'note', s.note,
    'statedAt', s.stated_at)), '[]') from containment_place s where s.containment_id = c.id)`;
const sortings = sql`(select coalesce(json_agg(json_build_object('id', s.id, 'place', s.place, 'day', s.day::text,
    'inspected', s.inspected, 'found', s.found, 'sample', s.sample, 'note', s.note, 'failureId', s.failure_id,
    'failureNumber', (select f.number from failure f where f.id = s.failure_id and f.plant_id = s.plant_id),
    'by', coalesce(${nameOf(sql`s.sorted_by`)}, ''), 'at', s.sorted_at, 'withdrawnAt', s.withdrawn_at,
    'withdrawReason', s.withdraw_reason) order by s.day desc, s.id desc), '[]')
  from containment_sorting s where s.containment_id = c.id)`;
const plants = sql`(select coalesce(json_agg(json_build_object('plantId', a.plant_id, 'plantCode', q.code, 'shares', a.shares,
    'toldAt', a.told_at, 'seenAt', a.seen_at, 'affected', a.affected, 'answer', a.answer, 'answeredAt', a.answered_at)
    order by q.code), '[]') from containment_alert a join plant q on q.id = a.plant_id where a.containment_id = c.id)`;

export const containmentSql = (id: string): Sql => sql`
  select c.id, c.plant_id as "plantId", p.code as "plantCode", c.number, c.complaint_id as "complaintId",
    m.number as "complaintNumber", c.case_id as "caseId", c.title, c.owner_id as "ownerId", o.name as "ownerName",
    c.housing_ids as "housingIds", c.terminal_ids as "terminalIds", c.line_ids as "lineIds", c.tool_ids as "toolIds",
    c.reel_lots as "reelLots", c.housing_lots as "housingLots", c.built_from::text as "builtFrom",
    c.built_to::text as "builtTo", c.suspect_quantity as "suspectQuantity", c.suspect_basis as "suspectBasis",
    c.clean_from::text as "cleanFrom", c.clean_serial as "cleanSerial", c.clean_lot as "cleanLot",
    c.clean_reason as "cleanReason", ${nameOf(sql`c.clean_by`)} as "cleanBy", c.clean_at as "cleanAt",
    c.created_at as "createdAt", c.closed_at as "closedAt", ${nameOf(sql`c.closed_by`)} as "closedBy",
    c.closing_note as "closingNote", c.version, ${names} as names, ${stated} as stated, ${sortings} as sortings,
    ${plants} as plants
  from containment c
  join plant p on p.id = c.plant_id
  join person o on o.id = c.owner_id
  left join complaint m on m.id = c.complaint_id
  where c.id = ${id}::uuid`;
