import { z } from 'zod';
import { Reply } from '#contracts/complaint-parts.ts';
import type { Database } from '#db/client.ts';
import { queryRows, sql } from '#db/sql.ts';

const Row = z.object({
  id: z.string(),
  complaintId: z.string(),
  plantId: z.string(),
  zone: z.string(),
  number: z.string(),
  title: z.string(),
  customerCode: z.string(),
  kind: Reply,
  ownerId: z.string(),
  dueAt: z.date(),
  shortAt: z.date(),
  urgentAt: z.date(),
  told: z.int(),
  version: z.int(),
});
export type ShortClock = z.infer<typeof Row>;

/** Running clocks of open complaints about which somebody has yet to be told. */
export const runningShort = (db: Database, at: Date): Promise<ShortClock[]> =>
  queryRows(
    db.pool,
    sql`select k.id, k.complaint_id as "complaintId", k.plant_id as "plantId", p.zone, c.number, c.title,
        u.code as "customerCode", k.kind, k.owner_id as "ownerId", k.due_at as "dueAt", k.short_at as "shortAt",
        k.urgent_at as "urgentAt", k.told, k.version
      from complaint_clock k
      join complaint c on c.id = k.complaint_id and c.closed_at is null
      join plant p on p.id = k.plant_id
      join customer u on u.id = c.customer_id
      where k.answered_at is null and k.paused_at is null and k.short_at <= ${at}
        and k.told < case when k.urgent_at <= ${at} then 2 else 1 end
      order by k.due_at, k.id limit 500`,
    Row,
  );
