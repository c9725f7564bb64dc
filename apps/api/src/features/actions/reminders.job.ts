import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { notify } from '#api/features/notices/notify.service.ts';
import { systemActor } from '#api/platform/jobs/system-actor.ts';
import { runUnit } from '#api/platform/unit.ts';
import { queryRows, sql } from '#db/sql.ts';
import { reminderOf } from './reminders.rules.ts';

/** Before this hour of the plant's day nobody is reminded. */
const firstHour = 6;

const Due = z.object({
  id: z.string(),
  plantId: z.string(),
  number: z.string(),
  title: z.string(),
  ownerId: z.string(),
  dueOn: z.string(),
  daysLeft: z.int(),
});

/** Reminds owners before the day, on it, and every week after it; each reminder once, whenever and however often this runs. */
export async function remindOwners(app: FastifyInstance, at: Date): Promise<void> {
  const due = await queryRows(
    app.db.pool,
    sql`select a.id, a.plant_id as "plantId", a.number, a.title, a.owner_id as "ownerId", a.due_on::text as "dueOn",
        a.due_on - (${at}::timestamptz at time zone p.zone)::date as "daysLeft"
      from action a join plant p on p.id = a.plant_id
      where a.state in ('agreed', 'under_way', 'held_up') and a.due_on <= (${at}::timestamptz at time zone p.zone)::date + 3
        and extract(hour from ${at}::timestamptz at time zone p.zone) >= ${firstHour}
      order by a.id`,
    Due,
  );
  for (const action of due) {
    const reminder = reminderOf(action.daysLeft);
    if (!reminder) continue;
    await runUnit(app.db, { actor: systemActor, at }, (unit) =>
      notify(unit, {
        to: [action.ownerId],
        kind: reminder.kind,
        key: `action ${action.id} ${action.dueOn} ${reminder.name}`,
        facts: { number: action.number, title: action.title, due: action.dueOn, days: Math.max(0, -action.daysLeft) },
        link: `/actions/${action.id}`,
        plantId: action.plantId,
      }),
    );
  }
}
