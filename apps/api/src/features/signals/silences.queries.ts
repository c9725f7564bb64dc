import { z } from 'zod';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import type { Silence } from '#contracts/signals.ts';
import type { Tx } from '#db/client.ts';
import { queryRows, raw, sql, txOne } from '#db/sql.ts';

const Row = z.object({
  id: z.string(),
  key: z.string(),
  plantId: z.string().nullable(),
  label: z.string(),
  reason: z.string(),
  until: z.string(),
  observed: z.number(),
  expected: z.number(),
  ratio: z.number(),
  silencedAt: z.coerce.date().transform((at) => at.toISOString()),
  silencedBy: z.string(),
  version: z.number(),
});

const columns =
  raw(`s.id, s.key, s.plant_id as "plantId", s.label, s.reason, s.until::text as until, s.observed, s.expected, s.ratio,
  s.silenced_at as "silencedAt", s.silenced_by as "silencedBy", s.version`);

/** What is silenced at the plants asked about on the day asked; over several plants also what spans plants. */
export const openSilences = ({ db, plants }: Asked, at: Date): Promise<Silence[]> =>
  queryRows(
    db.pool,
    sql`select ${columns} from signal_silence s
      where s.ended_at is null and s.until > (${at}::timestamptz at time zone coalesce((select p.zone from plant p where p.id = s.plant_id), 'UTC'))::date
        and (s.plant_id = any(${plants.map(({ id }) => id)}::uuid[]) or (s.plant_id is null and ${plants.length > 1}))
      order by s.silenced_at desc, s.id`,
    Row,
  );

export const findSilence = (tx: Tx, id: string): Promise<Silence | null> =>
  txOne(tx, sql`select ${columns} from signal_silence s where s.id = ${id}::uuid and s.ended_at is null`, Row);
