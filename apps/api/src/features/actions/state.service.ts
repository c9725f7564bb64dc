import { z } from 'zod';
import { notify } from '#api/features/notices/notify.service.ts';
import { problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { ActionOf } from '#contracts/actions.ts';
import { sql, txOne, txRows } from '#db/sql.ts';
import type { Stored } from './action.queries.ts';
import { type Move, mayMove, needsReason, reopens } from './actions.rules.ts';
import { PlantDay, plantDaySql } from './plant-day.queries.ts';
import { mayVerify, openForWrite, readAction } from './read.service.ts';
import { addStep, auditAction, changeRow } from './write.ts';

const Count = z.object({ evidence: z.int() });

async function requireEvidence({ tx }: Unit, actionId: string): Promise<void> {
  const row = await txOne(
    tx,
    sql`select count(*) as evidence from action_evidence e where e.action_id = ${actionId}::uuid and e.removed_at is null`,
    Count,
  );
  if (!row?.evidence)
    throw problem('conflict', 'Add evidence first: words, a photo, a file or a report that shows what was done.');
}

const today = async ({ tx, at }: Unit, plantId: string): Promise<Date> => {
  const plant = await txOne(tx, plantDaySql(plantId, at), PlantDay);
  return new Date(`${plant!.today}T00:00:00Z`);
};

/** Engineers and managers of the plant who may verify, the managers of the plant itself first; a handful is enough to tell. */
const verifiers = async ({ tx }: Unit, action: Stored, doer: string): Promise<string[]> =>
  (
    await txRows(
      tx,
      sql`select p.id from person p where p.retired_at is null and p.id <> ${action.ownerId}::uuid and p.id <> ${doer}::uuid
        and exists (select from role_grant g where g.person_id = p.id and g.plant_id = ${action.plantId}::uuid and g.role = 'manager')
        order by p.id limit 5`,
      z.object({ id: z.string() }),
    )
  ).map(({ id }) => id);

const clearedVerification = { verifiedBy: null, verifiedOn: null, verification: null };

/** Moves an action on, anywhere but to `verified`. */
export async function moveAction(
  unit: Unit,
  id: string,
  version: number,
  { state, reason }: { state: Move; reason: string | null },
): Promise<ActionOf> {
  const { tx, actor, at } = unit;
  const before = await openForWrite(unit, id);
  if (!mayMove(before.state, state))
    throw problem(
      'conflict',
      `From “${before.state}” it cannot go to “${state}”. Load the action and see what it allows.`,
    );
  if (needsReason(before.state, state) && !reason)
    throw problem('not_consistent', 'Say why: it is read by everybody who waits for this action.', [
      { path: 'body/reason', message: 'is missing' },
    ]);
  if (state === 'carried_out') await requireEvidence(unit, id);
  const doer = actor.kind === 'person' ? actor.id : null;
  await changeRow(unit, id, version, {
    state,
    stateReason: reason,
    stateAt: at,
    ...clearedVerification,
    ...(state === 'carried_out'
      ? { carriedOutOn: await today(unit, before.plantId), carriedOutBy: doer }
      : { carriedOutOn: null, carriedOutBy: null }),
    ...(reopens(before.state) && { reopened: { increment: 1 } }),
  });
  await addStep(unit, id, state, reason);
  const after = await readAction(tx, actor, id, at);
  await auditAction(unit, reopens(before.state) ? 'opened again' : 'moved', before, after);
  if (state === 'carried_out')
    await notify(unit, {
      to: await verifiers(unit, before, actor.id),
      kind: 'action_to_verify',
      key: `action ${id} carried out ${at.getTime()}`,
      facts: { number: after.number, title: after.title, by: actor.name },
      link: `/actions/${id}`,
      plantId: after.plantId,
    });
  return after;
}

/** Verifies what was carried out, or sends it back with what is missing. */
export async function verifyAction(
  unit: Unit,
  id: string,
  version: number,
  { passed, note }: { passed: boolean; note: string },
): Promise<ActionOf> {
  const { tx, actor, at } = unit;
  const before = await openForWrite(unit, id);
  if (before.state !== 'carried_out')
    throw problem('conflict', 'There is nothing to verify until the owner says that it was carried out.');
  if (!mayVerify(actor, before))
    throw problem('not_allowed', 'Another person verifies: not the owner, not who carried it out, and no machine.');
  const verified = { verifiedBy: actor.id, verifiedOn: await today(unit, before.plantId), verification: note };
  await changeRow(unit, id, version, {
    stateAt: at,
    ...(passed
      ? { state: 'verified' as const, stateReason: null, ...verified }
      : { state: 'under_way' as const, stateReason: note, carriedOutOn: null, carriedOutBy: null }),
  });
  await addStep(unit, id, passed ? 'verified' : 'under_way', note);
  const after = await readAction(tx, actor, id, at);
  await auditAction(unit, passed ? 'verified' : 'sent back', before, after);
  if (!passed)
    await notify(unit, {
      to: [before.ownerId],
      kind: 'action_sent_back',
      key: `action ${id} sent back ${at.getTime()}`,
      facts: { number: after.number, title: after.title, reason: note },
      link: `/actions/${id}`,
      plantId: after.plantId,
    });
  return after;
}
