import type pg from 'pg';
import { z } from 'zod';
import type { Unit } from '#api/platform/unit.ts';
import type { Report } from '#contracts/failures.ts';
import { Cause } from '#contracts/taxonomy.ts';
import { execute, queryRows, type Sql, sql, txExecute } from '#db/sql.ts';
import { type Answered, learnCase } from './learning.repository.ts';

/** Takes the live confirmation of a report out of what was learned, if there is one. */
export async function withdrawConfirmation(
  { tx, at }: Pick<Unit, 'tx' | 'at'>,
  { id, plantId }: Pick<Report, 'id' | 'plantId'>,
): Promise<void> {
  const live = await tx.confirmation.findFirst({ where: { plantId, failureId: id, supersededAt: null } });
  if (!live) return;
  await tx.confirmation.update({ where: { id_plantId: { id: live.id, plantId } }, data: { supersededAt: at } });
  if (live.cause !== 'undetermined')
    await learnCase((statement) => txExecute(tx, statement), plantId, live.cause, live.answers as Answered, -1);
}

const batch = 500;
const Withdrawn = z.object({ plantId: z.string(), cause: Cause, answers: z.record(z.string(), z.string()) });

/**
 * Takes back the confirmations of reports whose cause is another one now, each with its audit row. For many reports at once, on a
 * connection that is in a transaction.
 *
 * @param reports rows of plant_id and failure_id
 */
export async function withdrawOutdated(
  client: pg.ClientBase,
  reports: Sql,
  { at, actorId, actor }: { at: Date; actorId: string; actor: string },
): Promise<void> {
  const run = (statement: Sql) => execute(client, statement);
  for (;;) {
    const withdrawn = await queryRows(
      client,
      sql`with gone as (
          update confirmation c set superseded_at = ${at}::timestamptz
          from (select l.id, l.plant_id, f.number from (${reports}) r
            join failure f on f.plant_id = r.plant_id and f.id = r.failure_id
            join confirmation l on l.plant_id = f.plant_id and l.failure_id = f.id and l.superseded_at is null and l.cause is distinct from f.cause
            order by l.id limit ${batch}) o
          where c.id = o.id and c.plant_id = o.plant_id
          returning c.plant_id, c.failure_id, c.cause, c.answers, c.actor, c.at, o.number
        ), kept as (
          insert into audit_entry (id, at, actor_id, actor, action, entity, entity_id, label, plant_id, before)
          select uuidv7(), ${at}::timestamptz, ${actorId}::uuid, ${actor}, 'confirmation withdrawn', 'failure', g.failure_id::text, g.number, g.plant_id,
            jsonb_build_object('cause', g.cause, 'confirmedBy', g.actor, 'confirmedAt', g.at) from gone g
        )
        select g.plant_id as "plantId", g.cause, g.answers from gone g order by g.plant_id`,
      Withdrawn,
    );
    for (const { plantId, cause, answers } of withdrawn)
      if (cause !== 'undetermined') await learnCase(run, plantId, cause, answers, -1);
    if (withdrawn.length < batch) return;
  }
}
