import { z } from 'zod';
import type { PlantScope } from '#api/platform/actor.ts';
import { decodeCursor, toPage } from '#api/platform/cursor.ts';
import { ContainmentLine, type listContainments as contract } from '#contracts/containment.ts';
import type { Output } from '#contracts/shared/endpoint.ts';
import { Id } from '#contracts/shared/scalars.ts';
import type { Database } from '#db/client.ts';
import { join, queryRows, sql } from '#db/sql.ts';

const instant = z.date().transform((at) => at.toISOString());
const Line = ContainmentLine.extend({ createdAt: instant, closedAt: instant.nullable() });
const stateIs = { open: sql`c.closed_at is null`, closed: sql`c.closed_at is not null`, all: sql`true` };

export async function listContainments(
  db: Database,
  scope: PlantScope,
  query: NonNullable<Output<typeof contract.query>>,
) {
  const after = decodeCursor(query.cursor, z.tuple([Id]));
  const like = `%${(query.q ?? '').toLowerCase().replaceAll(/[\\%_]/g, '\\$&')}%`;
  const conditions = [
    stateIs[query.state],
    ...(scope === 'all' ? [] : [sql`c.plant_id = any(${[...scope]}::uuid[])`]),
    ...(query.complaint ? [sql`c.complaint_id = ${query.complaint}::uuid`] : []),
    ...(query.case ? [sql`c.case_id = ${query.case}::uuid`] : []),
    ...(query.q
      ? [
          sql`(lower(c.title) like ${like} or lower(c.number) like ${like} or exists (
            select from unnest(c.reel_lots || c.housing_lots) m (mark) where lower(m.mark) like ${like}))`,
        ]
      : []),
    ...(after ? [sql`c.id < ${after[0]}::uuid`] : []),
  ];
  const rows = await queryRows(
    db.pool,
    sql`select c.id, c.number, c.plant_id as "plantId", p.code as "plantCode", c.title, c.complaint_id as "complaintId",
        m.number as "complaintNumber", o.name as "ownerName", c.built_from::text as "builtFrom", c.built_to::text as "builtTo",
        s.inspected, s.found, (select coalesce(sum(l.quantity), 0)::bigint from containment_place l where l.containment_id = c.id) as stated,
        c.clean_at is not null as clean, c.created_at as "createdAt", c.closed_at as "closedAt"
      from containment c
      join plant p on p.id = c.plant_id
      join person o on o.id = c.owner_id
      left join complaint m on m.id = c.complaint_id
      cross join lateral (select coalesce(sum(t.inspected), 0)::bigint as inspected, coalesce(sum(t.found), 0)::bigint as found
        from containment_sorting t where t.containment_id = c.id and t.withdrawn_at is null) s
      where ${join(conditions, ' and ')} order by c.id desc limit ${query.limit + 1}`,
    Line,
  );
  return toPage(rows, query.limit, ({ id }) => [id]);
}
