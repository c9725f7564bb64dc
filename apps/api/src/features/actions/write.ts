import { recordChange } from '#api/platform/audit.ts';
import { newId } from '#api/platform/ids.ts';
import { changedMeanwhile } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { ActionState } from '#contracts/actions.ts';
import type { Prisma } from '#db/generated/client.ts';

interface Named {
  id: string;
  number: string;
  plantId: string;
}

/** Who changed what of an action; evidence and steps have rows of their own and are left out. */
export function auditAction(unit: Unit, action: string, before: Named | null, after: Named): Promise<void> {
  const plain = (value: Named | null) => {
    if (value === null) return null;
    const { evidence: _, steps: __, mayVerify: ___, ...fields } = value as Named & Record<string, unknown>;
    return fields;
  };
  return recordChange(unit, {
    action,
    entity: 'action',
    entityId: after.id,
    label: after.number,
    plantId: after.plantId,
    before: plain(before),
    after: plain(after),
  });
}

/** Changes the row if it still has the version that was read. */
export async function changeRow(
  { tx }: Unit,
  id: string,
  version: number,
  data: Prisma.ActionUncheckedUpdateManyInput,
): Promise<void> {
  const { count } = await tx.action.updateMany({
    where: { id, version },
    data: { ...data, version: { increment: 1 } },
  });
  if (count === 0) throw changedMeanwhile();
}

/** Notes a step of the state for good. */
export const addStep = ({ tx, at, actor }: Unit, actionId: string, state: ActionState, reason: string | null) =>
  tx.actionStep.create({ data: { id: newId(), actionId, at, actor: actor.name, state, reason } });
