import { z } from 'zod';
import type { Actor } from '#api/platform/actor.ts';
import { plantsWith } from '#api/platform/actor.ts';
import { decodeCursor, toPage } from '#api/platform/cursor.ts';
import { type listNotices as contract, MailSummary, Notice } from '#contracts/notices.ts';
import type { Output } from '#contracts/shared/endpoint.ts';
import { Id } from '#contracts/shared/scalars.ts';
import type { Database } from '#db/client.ts';
import { empty, execute, queryOne, queryRows, type Sql, sql } from '#db/sql.ts';

export const Told = z.object({ email: z.string(), locale: z.string() });

const instant = z.date().transform((at) => at.toISOString());
const Row = Notice.extend({ at: instant, readAt: instant.nullable() });

/** Of a plant that is no longer the reader's nothing is shown. */
const mine = (actor: Actor): Sql => {
  const scope = plantsWith(actor, 'masterData.read');
  const plants = scope === 'all' ? empty : sql`and (n.plant_id is null or n.plant_id = any(${[...scope]}::uuid[]))`;
  return sql`n.person_id = ${actor.id}::uuid ${plants}`;
};

export async function listNotices(db: Database, actor: Actor, query: NonNullable<Output<typeof contract.query>>) {
  const after = decodeCursor(query.cursor, z.tuple([Id]));
  const rows = await queryRows(
    db.pool,
    sql`select n.id, n.kind, n.facts, n.link, n.plant_id as "plantId", p.code as "plantCode", n.at, n.read_at as "readAt"
      from notice n left join plant p on p.id = n.plant_id
      where ${mine(actor)} ${query.unread ? sql`and n.read_at is null` : empty}
        ${after ? sql`and n.id < ${after[0]}::uuid` : empty}
      order by n.id desc limit ${query.limit + 1}`,
    Row,
  );
  return toPage(rows, query.limit, ({ id }) => [id]);
}

export async function countUnread(db: Database, actor: Actor): Promise<{ unread: number }> {
  const row = await queryOne(
    db.pool,
    sql`select count(*) as unread from notice n where ${mine(actor)} and n.read_at is null`,
    z.object({ unread: z.int() }),
  );
  return row ?? { unread: 0 };
}

/** How many there were to mark; one, or all of them. */
export const markRead = (db: Database, actor: Actor, at: Date, id?: string): Promise<number> =>
  execute(
    db.pool,
    sql`update notice n set read_at = coalesce(n.read_at, ${at}) where ${mine(actor)}
      and ${id ? sql`n.id = ${id}::uuid` : sql`n.read_at is null`}`,
  );

/** How outgoing mail stands; what was sent is left out. */
export async function mailSummary(db: Database) {
  const [row] = await queryRows(
    db.pool,
    sql`select count(*) filter (where state = 'waiting') as waiting, count(*) filter (where state = 'given_up') as "givenUp",
      min(queued_at) filter (where state = 'waiting') as "oldestWaiting",
      (array_agg(last_error order by coalesce(settled_at, next_try_at) desc) filter (where last_error is not null))[1] as "lastError"
      from mail where state <> 'sent'`,
    MailSummary.extend({ oldestWaiting: instant.nullable() }),
  );
  return row!;
}
