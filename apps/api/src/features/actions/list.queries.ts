import { z } from 'zod';
import type { Actor, PlantScope } from '#api/platform/actor.ts';
import { plantsWith } from '#api/platform/actor.ts';
import { decodeCursor, toPage } from '#api/platform/cursor.ts';
import { type ActionFilter, ActionRow } from '#contracts/actions.ts';
import type { PageQuery } from '#contracts/shared/paging.ts';
import { Day, Id } from '#contracts/shared/scalars.ts';
import type { Database } from '#db/client.ts';
import { empty, join, queryOne, queryRows, raw, type Sql, sql } from '#db/sql.ts';

const isOpen = raw("a.state not in ('verified', 'given_up')");
const isClosed = raw("(a.state in ('verified', 'given_up'))");
const isAwaited = raw("a.state in ('agreed', 'under_way', 'held_up')");
const todayOf = (at: Date): Sql => sql`(${at}::timestamptz at time zone p.zone)::date`;
const closedOn = raw(
  "case a.state when 'verified' then a.verified_on when 'given_up' then (a.state_at at time zone p.zone)::date end",
);

export const rowJoins = raw(`join plant p on p.id = a.plant_id join person o on o.id = a.owner_id
  left join effect_plan e on e.action_id = a.id
  left join lateral (select l.verdict from effect_look l where l.action_id = a.id order by l.day desc limit 1) k on true`);

/** The columns of a line of the list, over `action a` and `rowJoins`. */
export const rowColumns = (at: Date): Sql => sql`a.id, a.plant_id as "plantId", p.code as "plantCode", a.number, a.kind,
  a.title, a.owner_id as "ownerId", o.name as owner, a.opened_on::text as "openedOn", a.due_on::text as "dueOn", a.state,
  a.state_reason as "stateReason", (${closedOn})::text as "closedOn",
  coalesce(${closedOn}, ${todayOf(at)}) - a.opened_on as "daysOpen",
  case when ${isAwaited} then greatest(0, ${todayOf(at)} - a.due_on) else 0 end as "daysOverdue", a.reopened,
  case when e.action_id is not null then json_build_object('verdict', k.verdict, 'cleanPoint', e.clean_point) end as effect`;

/** Whoever asks may verify it: a person, not the owner, nor who carried it out, with the right at the plant. */
function verifiableBy(actor: Actor): Sql {
  if (actor.kind !== 'person') return sql`false`;
  const scope = plantsWith(actor, 'actions.write');
  const plants = scope === 'all' ? empty : sql`and a.plant_id = any(${[...scope]}::uuid[])`;
  return sql`(a.state = 'carried_out' and a.owner_id <> ${actor.id}::uuid
    and a.carried_out_by is distinct from ${actor.id}::uuid ${plants})`;
}

const when = (given: unknown, condition: () => Sql): Sql[] => (given === undefined ? [] : [condition()]);
const either = (wanted: boolean, condition: Sql): Sql => (wanted ? sql`(${condition})` : sql`not (${condition})`);
/** `%` and `_` stand for themselves. */
const containing = (q: string): string => `%${q.replaceAll(/[\\%_]/g, (it) => `\\${it}`)}%`;

function whereOf(filter: ActionFilter, scope: PlantScope, actor: Actor, at: Date): Sql {
  const owners = filter.owner?.map((id) => (id === 'me' ? actor.id : id));
  const verdicts = filter.verdict?.filter((verdict) => verdict !== 'none');
  const origin = (column: Sql, id: string | undefined): Sql[] => (id ? [sql`${column} = ${id}::uuid`] : []);
  return join(
    [
      sql`true`,
      ...(scope === 'all' ? [] : [sql`a.plant_id = any(${[...scope]}::uuid[])`]),
      ...(owners?.length ? [sql`a.owner_id = any(${owners}::uuid[])`] : []),
      ...(filter.kind?.length ? [sql`a.kind = any(${filter.kind}::action_kind[])`] : []),
      ...(filter.state?.length ? [sql`a.state = any(${filter.state}::action_state[])`] : []),
      ...when(filter.open, () => either(filter.open === true, isOpen)),
      ...when(filter.overdue, () => either(filter.overdue === true, sql`${isAwaited} and a.due_on < ${todayOf(at)}`)),
      ...when(filter.toVerify, () => either(filter.toVerify === true, verifiableBy(actor))),
      ...(verdicts && filter.verdict?.length
        ? [
            sql`(k.verdict = any(${verdicts}::effect_verdict[]) ${filter.verdict.includes('none') ? sql`or k.verdict is null` : empty})`,
          ]
        : []),
      ...when(filter.dueFrom, () => sql`a.due_on >= ${filter.dueFrom ?? null}::date`),
      ...when(filter.dueTo, () => sql`a.due_on < ${filter.dueTo ?? null}::date`),
      ...origin(raw('a.complaint_id'), filter.complaint),
      ...origin(raw('a.containment_id'), filter.containment),
      ...origin(raw('a.case_id'), filter.case),
      ...origin(raw('a.review_id'), filter.review),
      ...when(filter.q, () => {
        const pattern = containing(filter.q ?? '');
        return sql`(a.number ilike ${pattern} or a.title ilike ${pattern} or a.description ilike ${pattern})`;
      }),
    ],
    ' and ',
  );
}

export interface Asked {
  filter: ActionFilter;
  scope: PlantScope;
  actor: Actor;
  at: Date;
}

const selected = ({ filter, scope, actor, at }: Asked, beyond: Sql = empty): Sql =>
  sql`select ${rowColumns(at)} from action a ${rowJoins} where ${whereOf(filter, scope, actor, at)} ${beyond}
    order by ${isClosed}, a.due_on, a.id`;

export async function listActions(db: Database, asked: Asked, { cursor, limit }: PageQuery) {
  const after = decodeCursor(cursor, z.tuple([z.enum(['open', 'closed']), Day, Id]));
  const beyond = after
    ? sql`and (${isClosed}, a.due_on, a.id) > (${after[0] === 'closed'}, ${after[1]}::date, ${after[2]}::uuid)`
    : empty;
  const rows = await queryRows(db.pool, sql`${selected(asked, beyond)} limit ${limit + 1}`, ActionRow);
  return toPage(rows, limit, (row) => [row.closedOn ? 'closed' : 'open', row.dueOn, row.id]);
}

/** The whole filtered list, for the export. */
export const everyAction = (asked: Asked): Sql => selected(asked);

const Count = z.object({
  all: z.int(),
  open: z.int(),
  overdue: z.int(),
  toVerify: z.int(),
  reopened: z.int(),
  a: z.int(),
  b: z.int(),
  c: z.int(),
  d: z.int(),
});

/** How many there are, and the age of the open ones in whole weeks of two, four and eight. */
export async function countActions(db: Database, { filter, scope, actor, at }: Asked) {
  const age = sql`${todayOf(at)} - a.opened_on`;
  const row = await queryOne(
    db.pool,
    sql`select count(*) as "all", count(*) filter (where ${isOpen}) as open,
      count(*) filter (where ${isAwaited} and a.due_on < ${todayOf(at)}) as overdue,
      count(*) filter (where ${verifiableBy(actor)}) as "toVerify",
      count(*) filter (where ${isOpen} and a.reopened > 0) as reopened,
      count(*) filter (where ${isOpen} and ${age} < 14) as a, count(*) filter (where ${isOpen} and ${age} between 14 and 27) as b,
      count(*) filter (where ${isOpen} and ${age} between 28 and 55) as c, count(*) filter (where ${isOpen} and ${age} >= 56) as d
      from action a ${rowJoins} where ${whereOf(filter, scope, actor, at)}`,
    Count,
  );
  const { a, b, c, d, ...counts } = row!;
  return {
    ...counts,
    ageing: [
      { days: '0-13' as const, actions: a },
      { days: '14-27' as const, actions: b },
      { days: '28-55' as const, actions: c },
      { days: '56-' as const, actions: d },
    ],
  };
}
