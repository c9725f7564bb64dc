import { openAction } from '#api/features/actions/actions.service.ts';
import { holds, requirePlant } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { changedMeanwhile, notFound } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { AskedReadAcross, answerReadAcross } from '#contracts/lessons.ts';
import type { Output } from '#contracts/shared/endpoint.ts';
import { findAsked } from './lessons.queries.ts';

type Answer = NonNullable<Output<typeof answerReadAcross.body>>;

/** The answer of the plant that was asked; the last one holds. Where it applies, an action of the plant is opened. */
export async function answerAsked(unit: Unit, id: string, version: number, answer: Answer): Promise<AskedReadAcross> {
  const { tx, actor, at } = unit;
  const before = await findAsked(tx, id);
  if (!before || !holds(actor, 'cases.read', before.plantId)) throw notFound('question');
  requirePlant(actor, 'cases.write', before.plantId);
  const { count } = await tx.readAcross.updateMany({
    where: { id, version, withdrawnAt: null },
    data: {
      answer: answer.answer,
      answerText: answer.text,
      answeredAt: at,
      answeredBy: actor.name,
      version: { increment: 1 },
    },
  });
  if (count === 0) throw changedMeanwhile();
  if (answer.answer === 'applies' && before.actionId === null) {
    const action = await openAction(unit, {
      ...{ plantId: before.plantId, kind: 'read_across', ownerId: answer.ownerId, dueOn: answer.due },
      title: before.title.slice(0, 120),
      description: `${answer.text}\n\n${before.check}`,
      // The case is another plant's: the action does not name it.
      ...{ complaintId: null, containmentId: null, caseId: null, reviewId: null },
      ...{ effortHours: null, cost: null, prevention: null, effect: null },
    });
    await tx.readAcross.update({ where: { id }, data: { actionId: action.id } });
  }
  const after = (await findAsked(tx, id))!;
  await recordChange(unit, {
    ...{ action: 'answered', entity: 'read_across', entityId: id, label: after.title, plantId: after.plantId },
    before: { answer: before.answer, answerText: before.answerText },
    after: { answer: after.answer, answerText: after.answerText, actionId: after.actionId },
  });
  return after;
}
