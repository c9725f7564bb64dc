import { z } from 'zod';
import { timeUnits } from '#contracts/reply-times.ts';
import type { Tx } from '#db/client.ts';
import { sql, txExecute, txRows } from '#db/sql.ts';

const Waiting = z.object({
  id: z.string(),
  amount: z.int(),
  unit: z.enum(timeUnits),
  startedAt: z.date(),
  told: z.int(),
});
const Event = z.object({ clockId: z.string(), step: z.string(), at: z.date() });

/** Clocks of a plant's open complaints that wait for an answer, with what was done to them in order of time. */
export async function waitingClocks(tx: Tx, plantId: string) {
  const waiting = sql`complaint_clock k join complaint c on c.id = k.complaint_id and c.closed_at is null
    where k.plant_id = ${plantId}::uuid and k.answered_at is null`;
  const clocks = await txRows(
    tx,
    sql`select k.id, k.amount, k.unit, k.started_at as "startedAt", k.told from ${waiting} order by k.id for update of k`,
    Waiting,
  );
  const events = await txRows(
    tx,
    sql`select e.clock_id as "clockId", e.step, e.at from complaint_clock_event e
      where e.clock_id in (select k.id from ${waiting}) order by e.id`,
    Event,
  );
  return { clocks, events };
}

export async function saveReckoned(
  tx: Tx,
  clocks: readonly { id: string; dueAt: Date; shortAt: Date; urgentAt: Date; told: number }[],
): Promise<void> {
  await txExecute(
    tx,
    sql`update complaint_clock k set due_at = r.due_at, short_at = r.short_at, urgent_at = r.urgent_at, told = r.told
      from unnest(${clocks.map(({ id }) => id)}::uuid[], ${clocks.map(({ dueAt }) => dueAt)}::timestamptz[],
        ${clocks.map(({ shortAt }) => shortAt)}::timestamptz[], ${clocks.map(({ urgentAt }) => urgentAt)}::timestamptz[],
        ${clocks.map(({ told }) => told)}::smallint[]) as r (id, due_at, short_at, urgent_at, told)
      where k.id = r.id`,
  );
}
