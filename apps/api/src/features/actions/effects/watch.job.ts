import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { systemActor } from '#api/platform/jobs/system-actor.ts';
import { runUnit } from '#api/platform/unit.ts';
import { queryRows, sql } from '#db/sql.ts';
import { watchAction } from './watch.service.ts';

/** So long after its clean point an action is watched. */
const watchedYears = 3;

/** Looks at every action whose clean point has come, each in a transaction of its own: recurrences at once, the verdict daily. */
export async function watchEffects(app: FastifyInstance, at: Date): Promise<void> {
  const actions = await queryRows(
    app.db.pool,
    sql`select a.id from action a join effect_plan e on e.action_id = a.id join plant p on p.id = a.plant_id
      where a.state <> 'given_up' and e.clean_point <= (${at}::timestamptz at time zone p.zone)::date
        and e.clean_point > (${at}::timestamptz at time zone p.zone)::date - ${watchedYears * 366}::int
      order by a.id`,
    z.object({ id: z.string() }),
  );
  for (const { id } of actions)
    await runUnit(app.db, { actor: systemActor, at }, (unit) => watchAction(unit, id)).catch((error) =>
      app.log.error(error, `The effect of action ${id} could not be judged.`),
    );
}
