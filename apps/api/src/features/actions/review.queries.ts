/** What a review asks of the actions of its plants. */
import { z } from 'zod';
import { ActionKind, ActionState } from '#contracts/actions.ts';
import { EffectVerdict } from '#contracts/effects.ts';
import type { Database, Tx } from '#db/client.ts';
import { queryRows, raw, type Sql, sql, txRows } from '#db/sql.ts';

const Row = z.object({
  id: z.string(),
  number: z.string(),
  plantId: z.string(),
  plantCode: z.string(),
  kind: ActionKind,
  title: z.string(),
  owner: z.string(),
  dueOn: z.string(),
  state: ActionState,
});
const Made = Row.extend({ description: z.string().nullable(), decidedAt: z.date(), decidedBy: z.string() });
const Pledge = Row.extend({ week: z.string(), doneOn: z.string().nullable(), past: z.boolean() });
export type PromiseRow = z.infer<typeof Pledge>;

const columns = raw(`a.id, a.number, a.plant_id as "plantId", p.code as "plantCode", a.kind, a.title, o.name as owner,
  a.due_on::text as "dueOn", a.state`);
const joins = raw('join plant p on p.id = a.plant_id join person o on o.id = a.owner_id');
const inPlants = (plantIds: readonly string[]): Sql => sql`a.plant_id = any(${[...plantIds]}::uuid[])`;

/** The actions that name one of the reviews, in the order they were opened. */
export const actionsNaming = (tx: Tx | Database['prisma'], reviewIds: readonly string[]) =>
  txRows(
    tx,
    sql`select ${columns}, a.description, a.opened_at as "decidedAt", a.opened_by as "decidedBy"
      from action a ${joins} where a.review_id = any(${[...reviewIds]}::uuid[]) order by a.opened_at, a.id`,
    Made,
  );

/** Actions decided by reviews of earlier weeks that are not done, or were done or given up since the first day of this one. */
export const promisesBefore = (db: Database, plantIds: readonly string[], weekFrom: string, at: Date) =>
  queryRows(
    db.pool,
    sql`select ${columns}, r.week_from::text as week, a.carried_out_on::text as "doneOn",
        a.due_on < (${at}::timestamptz at time zone p.zone)::date as past
      from action a ${joins} join review r on r.id = a.review_id
      where ${inPlants(plantIds)} and r.week_from < ${weekFrom}::date
        and case when a.carried_out_on is not null then a.carried_out_on >= ${weekFrom}::date
          when a.state = 'given_up' then (a.state_at at time zone p.zone)::date >= ${weekFrom}::date else true end
      order by a.due_on, a.id`,
    Pledge,
  );

const Effect = z.object({
  id: z.string(),
  number: z.string(),
  plantCode: z.string(),
  title: z.string(),
  verdict: EffectVerdict,
  cleanPoint: z.string(),
  recurrences: z.int(),
  changed: z.boolean(),
});
export type EffectRow = z.infer<typeof Effect>;

/** The newest verdict on every action that is judged, and whether it was said for the first time since the day. */
export const newestVerdicts = (db: Database, plantIds: readonly string[], since: string) =>
  queryRows(
    db.pool,
    sql`select a.id, a.number, p.code as "plantCode", a.title, k.verdict, e.clean_point::text as "cleanPoint",
        (select count(*) from effect_recurrence c where c.action_id = a.id) as recurrences,
        not exists (select from effect_look b where b.action_id = a.id and b.verdict = k.verdict and b.day < ${since}::date) as changed
      from action a join plant p on p.id = a.plant_id join effect_plan e on e.action_id = a.id
        join lateral (select l.verdict from effect_look l where l.action_id = a.id order by l.day desc limit 1) k on true
      where ${inPlants(plantIds)} and a.state <> 'given_up' order by a.due_on, a.id`,
    Effect,
  );
