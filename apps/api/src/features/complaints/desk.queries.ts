import { z } from 'zod';
import type { PlantScope } from '#api/platform/actor.ts';
import { decodeCursor } from '#api/platform/cursor.ts';
import { Reply } from '#contracts/complaint-parts.ts';
import { ComplaintLine, type listComplaints } from '#contracts/complaints.ts';
import type { Output } from '#contracts/shared/endpoint.ts';
import { Id } from '#contracts/shared/scalars.ts';
import type { Database } from '#db/client.ts';
import { empty, join, queryOne, queryRows, type Sql, sql } from '#db/sql.ts';

export type DeskQuery = NonNullable<Output<typeof listComplaints.query>>;

const instant = z.date().transform((at) => at.toISOString());
const Line = ComplaintLine.omit({ next: true }).extend({
  receivedAt: instant,
  closedAt: instant.nullable(),
  nextKind: Reply.nullable(),
  nextDueAt: z.date().nullable(),
  nextShortAt: z.date().nullable(),
  nextPausedAt: z.date().nullable(),
  nextOwnerName: z.string().nullable(),
  sortKey: z.string(),
});
export type DeskLine = z.infer<typeof Line>;

const running = sql`k.complaint_id = c.id and k.answered_at is null and k.paused_at is null`;
const clockIs = {
  overdue: (at: Date) => sql`exists (select from complaint_clock k where ${running} and k.due_at < ${at})`,
  short: (at: Date) =>
    sql`exists (select from complaint_clock k where ${running} and k.due_at >= ${at} and k.short_at <= ${at})`,
};
const stateIs = { open: sql`c.closed_at is null`, closed: sql`c.closed_at is not null`, all: sql`true` };
const inScope = (scope: PlantScope): Sql =>
  scope === 'all' ? sql`true` : sql`c.plant_id = any(${[...scope]}::uuid[])`;
const contains = (q: string) => `%${q.toLowerCase().replaceAll(/[\\%_]/g, '\\$&')}%`;

function whereOf(scope: PlantScope, query: DeskQuery, actorId: string, at: Date): Sql {
  return join(
    [
      inScope(scope),
      stateIs[query.state],
      ...(query.customer?.length ? [sql`c.customer_id = any(${query.customer}::uuid[])`] : []),
      ...(query.housing?.length ? [sql`c.housing_id = any(${query.housing}::uuid[])`] : []),
      ...(query.clock ? [clockIs[query.clock](at)] : []),
      ...(query.mine
        ? [
            sql`(c.owner_id = ${actorId}::uuid or exists (select from complaint_clock k
              where k.complaint_id = c.id and k.answered_at is null and k.owner_id = ${actorId}::uuid))`,
          ]
        : []),
      ...(query.safety === undefined ? [] : [sql`c.safety = ${query.safety}`]),
      ...(query.failure
        ? [
            sql`exists (select from complaint_failure l where l.complaint_id = c.id and l.failure_id = ${query.failure}::uuid)`,
          ]
        : []),
      ...(query.q
        ? [
            sql`(c.search like ${contains(query.q)} or lower(c.number) like ${contains(query.q)}
              or exists (select from unnest(c.lots || c.serials) m (mark) where lower(m.mark) like ${contains(query.q)}))`,
          ]
        : []),
    ],
    ' and ',
  );
}

/** Open ones by the clock that runs out first, those without a running clock last; others by the day they came, newest first. */
export function listLines(
  db: Database,
  scope: PlantScope,
  query: DeskQuery,
  actorId: string,
  at: Date,
): Promise<DeskLine[]> {
  const after = decodeCursor(query.cursor, z.tuple([z.string().regex(/^[\d .:+TZ-]+$|^infinity$/), Id]));
  const open = query.state === 'open';
  const key = open ? sql`coalesce(case when n.paused_at is null then n.due_at end, 'infinity')` : sql`c.received_at`;
  const beyond = after
    ? open
      ? sql`and (${key}, c.id) > (${after[0]}::timestamptz, ${after[1]}::uuid)`
      : sql`and (${key}, c.id) < (${after[0]}::timestamptz, ${after[1]}::uuid)`
    : empty;
  const order = open ? sql`${key}, c.id` : sql`${key} desc, c.id desc`;
  return queryRows(
    db.pool,
    sql`select c.id, c.plant_id as "plantId", p.code as "plantCode", c.number, u.code as "customerCode",
        c.customer_ref as "customerRef", c.title, coalesce(h.code, t.code) as "partCode", c.quantity,
        c.received_at as "receivedAt", c.safety, c.safety_seen_at is not null as "safetySeen", o.name as "ownerName",
        (select count(*) from complaint_failure l where l.complaint_id = c.id) as reports, c.closed_at as "closedAt",
        n.kind as "nextKind", n.due_at as "nextDueAt", n.short_at as "nextShortAt", n.paused_at as "nextPausedAt",
        w.name as "nextOwnerName", s.paused, s.answered, s.clocks, (${key})::text as "sortKey"
      from complaint c
      join plant p on p.id = c.plant_id
      join customer u on u.id = c.customer_id
      join person o on o.id = c.owner_id
      left join housing h on h.id = c.housing_id
      left join terminal t on t.id = c.terminal_id
      left join lateral (select k.* from complaint_clock k where k.complaint_id = c.id and k.answered_at is null
        order by (k.paused_at is not null), k.due_at, k.kind limit 1) n on true
      left join person w on w.id = n.owner_id
      cross join lateral (select count(*) filter (where k.answered_at is null and k.paused_at is not null) as paused,
          count(k.answered_at) as answered, count(*) as clocks
        from complaint_clock k where k.complaint_id = c.id) s
      where ${whereOf(scope, query, actorId, at)} ${beyond}
      order by ${order} limit ${query.limit + 1}`,
    Line,
  );
}

const Counts = z.object({ open: z.int(), overdue: z.int(), short: z.int(), paused: z.int(), safetyUnseen: z.int() });
export type DeskCounts = z.infer<typeof Counts>;

/** Open complaints of the scope, and how many of them have a clock overdue, running short or paused. */
export async function countDesk(db: Database, scope: PlantScope, at: Date): Promise<DeskCounts> {
  const counts = await queryOne(
    db.pool,
    sql`select count(*) as open, count(*) filter (where ${clockIs.overdue(at)}) as overdue,
        count(*) filter (where ${clockIs.short(at)}) as short,
        count(*) filter (where exists (select from complaint_clock k where k.complaint_id = c.id and k.answered_at is null
          and k.paused_at is not null)) as paused,
        count(*) filter (where c.safety and c.safety_seen_at is null) as "safetyUnseen"
      from complaint c where c.closed_at is null and ${inScope(scope)}`,
    Counts,
  );
  return counts!;
}
