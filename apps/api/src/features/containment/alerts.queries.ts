import { z } from 'zod';
import type { PlantScope } from '#api/platform/actor.ts';
import { decodeCursor, toPage } from '#api/platform/cursor.ts';
import { Alert, type listAlerts as contract } from '#contracts/containment.ts';
import type { Output } from '#contracts/shared/endpoint.ts';
import { Id } from '#contracts/shared/scalars.ts';
import type { Database, Tx } from '#db/client.ts';
import { join, queryRows, type Sql, sql, txOne } from '#db/sql.ts';

const instant = z.coerce.date().transform((at) => at.toISOString());
const Row = Alert.extend({ toldAt: instant, seenAt: instant.nullable(), answeredAt: instant.nullable() });

/** What the plant told sees of a containment elsewhere, and how many of its own reports lie in the scope. */
const alertSql = (where: Sql): Sql => sql`
  select a.id, a.plant_id as "plantId", q.code as "plantCode", p.code as "from", c.number, a.shares,
    array(select h.code from housing h where h.id = any(c.housing_ids) union select t.code from terminal t
      where t.id = any(c.terminal_ids) order by 1) as parts, c.reel_lots || c.housing_lots as lots,
    array(select distinct t.type from tool t where t.id = any(c.tool_ids) and t.type is not null order by 1) as "toolTypes",
    c.built_from::text as "builtFrom", c.built_to::text as "builtTo",
    (select count(*) from failure f where f.plant_id = a.plant_id and f.voided_at is null
      and coalesce(f.built_on, f.found_on) >= c.built_from and coalesce(f.built_on, f.found_on) < c.built_to
      and (c.housing_ids = '{}' or f.housing_id = any(c.housing_ids)) and (c.terminal_ids = '{}' or f.terminal_id = any(c.terminal_ids))
      and (c.reel_lots = '{}' or f.reel_lot = any(c.reel_lots)) and (c.housing_lots = '{}' or f.housing_lot = any(c.housing_lots))
    ) as "ownReports", a.told_at as "toldAt", a.seen_at as "seenAt", a.affected, a.answer,
    (select name from person where id = a.answered_by) as "answeredBy", a.answered_at as "answeredAt",
    c.closed_at is null as open, a.version
  from containment_alert a
  join containment c on c.id = a.containment_id
  join plant p on p.id = c.plant_id
  join plant q on q.id = a.plant_id
  where ${where}`;

export const findAlert = (tx: Tx, id: string): Promise<Alert | null> =>
  txOne(tx, alertSql(sql`a.id = ${id}::uuid`), Row);

export async function listAlerts(db: Database, scope: PlantScope, query: NonNullable<Output<typeof contract.query>>) {
  const after = decodeCursor(query.cursor, z.tuple([Id]));
  const where = join(
    [
      ...(scope === 'all' ? [] : [sql`a.plant_id = any(${[...scope]}::uuid[])`]),
      ...(query.state === 'waiting' ? [sql`a.answered_at is null and c.closed_at is null`] : []),
      ...(after ? [sql`a.id < ${after[0]}::uuid`] : []),
      sql`true`,
    ],
    ' and ',
  );
  const rows = await queryRows(db.pool, sql`${alertSql(where)} order by a.id desc limit ${query.limit + 1}`, Row);
  return toPage(rows, query.limit, ({ id }) => [id]);
}
