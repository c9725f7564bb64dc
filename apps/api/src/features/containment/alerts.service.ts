import { notify } from '#api/features/notices/notify.service.ts';
import { holds, requirePlant } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { changedMeanwhile, notFound } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Alert } from '#contracts/containment.ts';
import { findAlert } from './alerts.queries.ts';

/** The plant told says whether it is affected; the owner of the containment is told. */
export async function answerAlert(
  unit: Unit,
  id: string,
  version: number,
  { affected, answer }: { affected: boolean; answer: string },
): Promise<Alert> {
  const { tx, actor, at } = unit;
  const before = await findAlert(tx, id);
  if (!before || !holds(actor, 'containment.read', before.plantId)) throw notFound('alert');
  requirePlant(actor, 'containment.write', before.plantId);
  const seen = before.seenAt ? {} : { seenAt: at, seenBy: actor.id };
  const { count } = await tx.containmentAlert.updateMany({
    where: { id, version },
    data: { affected, answer, answeredBy: actor.id, answeredAt: at, ...seen, version: { increment: 1 } },
  });
  if (count === 0) throw changedMeanwhile();
  const after = (await findAlert(tx, id))!;
  await recordChange(unit, {
    action: 'answered',
    entity: 'containment_alert',
    entityId: id,
    label: after.number,
    plantId: after.plantId,
    before,
    after,
  });
  const asked = await tx.containmentAlert.findUniqueOrThrow({ where: { id }, select: { containmentId: true } });
  const { ownerId, plantId } = await tx.containment.findUniqueOrThrow({ where: { id: asked.containmentId } });
  await notify(unit, {
    to: [ownerId],
    kind: 'containment_answer',
    key: `containment answer ${id} ${after.version}`,
    facts: { number: after.number, from: after.plantCode, affected: affected ? '#affected' : '#not_affected', answer },
    link: `/containment/${asked.containmentId}`,
    plantId,
  });
  return after;
}
