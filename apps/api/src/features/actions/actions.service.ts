import { notify } from '#api/features/notices/notify.service.ts';
import { listColleagues } from '#api/features/people/colleagues.service.ts';
import { requirePlant } from '#api/platform/actor.ts';
import { newId } from '#api/platform/ids.ts';
import { problem, unknownReference } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { ActionChange, ActionInput, ActionOf } from '#contracts/actions.ts';
import { sql, txOne } from '#db/sql.ts';
import { actionNumber, isChangeable } from './actions.rules.ts';
import { planEffect } from './effects/plan.service.ts';
import { PlantDay, plantDaySql, Running } from './plant-day.queries.ts';
import { openForWrite, readAction } from './read.service.ts';
import { auditAction, changeRow } from './write.ts';

async function requireOwner(unit: Unit, plantId: string, ownerId: string): Promise<void> {
  const colleagues = await listColleagues(unit.tx, plantId, 'actions.write');
  if (!colleagues.some(({ id }) => id === ownerId))
    throw unknownReference('ownerId', 'person who may work on actions at the plant');
}

const day = (text: string): Date => new Date(`${text}T00:00:00Z`);

const fieldsOf = (input: ActionChange) => ({
  kind: input.kind,
  title: input.title,
  description: input.description || null,
  ownerId: input.ownerId,
  dueOn: day(input.dueOn),
  effortHours: input.effortHours,
  costMinor: input.cost ? BigInt(input.cost.amountMinor) : null,
  costCurrency: input.cost?.currency ?? null,
  prevention: input.prevention,
});

async function takeNumber({ tx }: Unit, plantId: string, code: string, today: string): Promise<string> {
  const year = Number(today.slice(0, 4));
  const row = await txOne(
    tx,
    sql`insert into action_counter as c (plant_id, year, last) values (${plantId}::uuid, ${year}, 1)
      on conflict (plant_id, year) do update set last = c.last + 1 returning c.last`,
    Running,
  );
  return actionNumber(code, year, row?.last ?? 1);
}

const assigned = (unit: Unit, action: Pick<ActionOf, 'id' | 'ownerId' | 'number' | 'title' | 'dueOn' | 'plantId'>) =>
  notify(unit, {
    to: [action.ownerId],
    kind: 'action_assigned',
    key: `action ${action.id} assigned ${unit.at.getTime()}`,
    facts: { number: action.number, title: action.title, due: action.dueOn, by: unit.actor.name },
    link: `/actions/${action.id}`,
    plantId: action.plantId,
  });

/** Opens an action and tells its owner. Whoever calls answers for its origin. A repeated `id` gives the action it made. */
export async function openAction(unit: Unit, input: ActionInput): Promise<ActionOf> {
  const { tx, actor, at } = unit;
  requirePlant(actor, 'actions.write', input.plantId);
  const id = input.id ?? newId();
  const known = input.id ? await tx.action.findUnique({ where: { id }, select: { plantId: true } }) : null;
  if (known) {
    if (known.plantId !== input.plantId) throw problem('already_exists', 'The id belongs to another action.');
    return readAction(tx, actor, id, at);
  }
  const plant = await txOne(tx, plantDaySql(input.plantId, at), PlantDay);
  if (!plant || plant.retired) throw unknownReference('plantId', 'plant');
  await requireOwner(unit, input.plantId, input.ownerId);
  if (input.dueOn < plant.today)
    throw problem('not_consistent', `At the plant it is ${plant.today}. Choose a due day that is still to come.`, [
      { path: 'body/dueOn', message: 'lies in the past' },
    ]);
  await tx.action.create({
    data: {
      id,
      plantId: input.plantId,
      number: await takeNumber(unit, input.plantId, plant.code, plant.today),
      ...fieldsOf(input),
      complaintId: input.complaintId,
      containmentId: input.containmentId,
      caseId: input.caseId,
      reviewId: input.reviewId,
      openedAt: at,
      openedOn: day(plant.today),
      openedBy: actor.name,
      stateAt: at,
    },
  });
  await tx.actionStep.create({ data: { id: newId(), actionId: id, at, actor: actor.name, state: 'agreed' } });
  if (input.effect) await planEffect(unit, id, input.effect);
  const action = await readAction(tx, actor, id, at);
  await auditAction(unit, 'opened', null, action);
  await assigned(unit, action);
  return action;
}

/** Changes what was agreed, while it is not yet carried out. */
export async function changeAction(unit: Unit, id: string, version: number, change: ActionChange): Promise<ActionOf> {
  const before = await openForWrite(unit, id);
  if (!isChangeable(before.state))
    throw problem('conflict', 'It was carried out or closed. Open it again first, with a reason.');
  if (change.ownerId !== before.ownerId) await requireOwner(unit, before.plantId, change.ownerId);
  await changeRow(unit, id, version, fieldsOf(change));
  const after = await readAction(unit.tx, unit.actor, id, unit.at);
  await auditAction(unit, 'changed', before, after);
  if (after.ownerId !== before.ownerId) await assigned(unit, after);
  return after;
}
