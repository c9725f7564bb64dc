import { z } from 'zod';
import { Clock, Consent, LinkedReport } from '#contracts/complaint-parts.ts';
import { Complaint } from '#contracts/complaints.ts';
import { Photo } from '#contracts/failures.ts';
import { type Sql, sql } from '#db/sql.ts';

const date = z.coerce.date();
const instant = date.transform((at) => at.toISOString());

/** A clock as stored: how it stands is told by the rules. */
const StoredClock = Clock.omit({ state: true, minutesLeft: true }).extend({
  startedAt: instant,
  dueAt: date,
  shortAt: date,
  urgentAt: date,
  pausedAt: date.nullable(),
  answeredAt: date.nullable(),
  told: z.int(),
  events: z.array(Clock.shape.events.element.extend({ at: instant })),
});
export type StoredClock = z.infer<typeof StoredClock>;
const StoredConsent = Consent.omit({ mayAnswer: true }).extend({
  askedById: z.string(),
  askedAt: instant,
  answeredAt: instant.nullable(),
});
/** A complaint as stored. What depends on who asks and when is added by the service. */
export const StoredComplaint = Complaint.omit({ blocks: true, maySeeSafety: true, safetyPerson: true }).extend({
  receivedAt: instant,
  safetySeenAt: instant.nullable(),
  createdAt: instant,
  createdById: z.string(),
  closedAt: instant.nullable(),
  clocks: z.array(StoredClock),
  consents: z.array(StoredConsent),
  reports: z.array(LinkedReport),
  photos: z.array(Photo.extend({ addedAt: instant })),
});
export type StoredComplaint = z.infer<typeof StoredComplaint>;

const nameOf = (column: Sql) =>
  sql`coalesce((select name from person where id = ${column}), (select name from api_token where id = ${column}))`;

const clocks = sql`(select coalesce(json_agg(json_build_object('id', k.id, 'kind', k.kind, 'amount', k.amount, 'unit', k.unit,
    'ownerId', k.owner_id, 'ownerName', o.name, 'startedAt', k.started_at, 'dueAt', k.due_at, 'shortAt', k.short_at,
    'urgentAt', k.urgent_at, 'pausedAt', k.paused_at, 'pauseReason', k.pause_reason, 'answeredAt', k.answered_at,
    'answeredBy', ${nameOf(sql`k.answered_by`)}, 'sent', k.sent, 'told', k.told, 'version', k.version,
    'events', (select coalesce(json_agg(json_build_object('id', e.id, 'step', e.step, 'at', e.at, 'actor', e.actor,
        'note', e.note) order by e.id), '[]') from complaint_clock_event e where e.clock_id = k.id)) order by k.kind), '[]')
  from complaint_clock k join person o on o.id = k.owner_id where k.complaint_id = c.id)`;
const consents = sql`(select coalesce(json_agg(json_build_object('id', s.id, 'kind', s.kind, 'reason', s.reason,
    'askedById', s.asked_by, 'askedBy', ${nameOf(sql`s.asked_by`)}, 'askedAt', s.asked_at, 'answer', s.answer,
    'answeredBy', ${nameOf(sql`s.answered_by`)}, 'answeredAt', s.answered_at, 'note', s.note) order by s.id desc), '[]')
  from complaint_consent s where s.complaint_id = c.id)`;
const reports = sql`(select coalesce(json_agg(json_build_object('id', f.id, 'number', f.number, 'foundOn', f.found_on::text,
    'quantityFound', f.quantity_found, 'effect', f.effect, 'cause', f.cause, 'voided', f.voided_at is not null,
    'findingsTaken', (select count(*) from finding g where g.plant_id = f.plant_id and g.failure_id = f.id),
    'confirmed', exists (select from confirmation n where n.plant_id = f.plant_id and n.failure_id = f.id
      and n.superseded_at is null)) order by f.found_on, f.id), '[]')
  from complaint_failure l join failure f on f.id = l.failure_id and f.plant_id = l.plant_id where l.complaint_id = c.id)`;
const photos = sql`(select coalesce(json_agg(json_build_object('id', h.id, 'width', h.width, 'height', h.height,
    'bytes', h.bytes, 'caption', h.caption, 'addedAt', h.added_at) order by h.id), '[]')
  from complaint_photo h where h.complaint_id = c.id and h.removed_at is null)`;
const containments = sql`(select coalesce(json_agg(json_build_object('id', t.id, 'number', t.number, 'title', t.title,
    'closed', t.closed_at is not null) order by t.id), '[]') from containment t where t.complaint_id = c.id)`;

/** Reads one complaint by its id. */
export const complaintSql = (id: string): Sql => sql`
  select c.id, c.plant_id as "plantId", p.code as "plantCode", c.number, c.customer_id as "customerId",
    u.code as "customerCode", c.customer_ref as "customerRef", c.customer_part as "customerPart", c.title,
    c.housing_id as "housingId", h.code as "housingCode", c.terminal_id as "terminalId", t.code as "terminalCode",
    c.quantity, c.lots, c.serials, c.received_at as "receivedAt", c.built_on::text as "builtOn",
    c.found_on::text as "foundOn", c.effect, c.mail_text as "mailText", c.safety, c.safety_seen_at as "safetySeenAt",
    ${nameOf(sql`c.safety_seen_by`)} as "safetySeenBy", c.owner_id as "ownerId", o.name as "ownerName",
    c.created_at as "createdAt", c.created_by as "createdById", coalesce(${nameOf(sql`c.created_by`)}, '') as "createdBy",
    c.closed_at as "closedAt", ${nameOf(sql`c.closed_by`)} as "closedBy", c.closing_note as "closingNote", c.version,
    ${clocks} as clocks, ${consents} as consents, ${reports} as reports, ${photos} as photos,
    ${containments} as containments
  from complaint c
  join plant p on p.id = c.plant_id
  join customer u on u.id = c.customer_id
  join person o on o.id = c.owner_id
  left join housing h on h.id = c.housing_id
  left join terminal t on t.id = c.terminal_id
  where c.id = ${id}::uuid`;
