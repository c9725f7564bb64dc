import { openAction } from '#api/features/actions/actions.service.ts';
import { decidedActions } from '#api/features/actions/review.service.ts';
import { changedMeanwhile, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { DecisionInput, Review } from '#contracts/review.ts';
import type { Decision } from '#contracts/review-content.ts';
import type { Database, Tx } from '#db/client.ts';
import { changeOpen, type Row, scopeOfRow } from './review.repository.ts';
import { presentReview, requireReview } from './review.service.ts';
import { coversScope } from './scope.rules.ts';

/** The decisions of an edition and of those that it corrects: the actions that name them, in the order they were taken. */
export const decisionsOf = (
  tx: Tx | Database['prisma'],
  { edition }: Pick<Row, 'edition'>,
  editions: readonly Pick<Row, 'id' | 'edition'>[],
): Promise<Decision[]> =>
  decidedActions(
    tx,
    editions.filter((one) => one.edition <= edition).map(({ id }) => id),
  );

/** Writes down a decision of an open review as an action of one of its plants. */
export async function addDecision(unit: Unit, id: string, decision: DecisionInput): Promise<Review> {
  const row = await requireReview(unit.tx, unit.actor, id);
  if (!coversScope(unit.actor, 'reviews.write', scopeOfRow(row)))
    throw problem('not_allowed', 'Decisions are written down by a manager of every plant of the review.');
  if (row.closedAt)
    throw problem('conflict', 'This review is closed. Begin a corrected edition, or open the action on its own.');
  if (!row.plantIds.includes(decision.plantId))
    throw problem('not_consistent', 'Choose a plant that the review is about.', [
      { path: 'body/plantId', message: 'is not part of this review' },
    ]);
  if (!(await changeOpen(unit.tx, row, {}))) throw changedMeanwhile();
  await openAction(unit, {
    ...decision,
    reviewId: id,
    complaintId: null,
    containmentId: null,
    caseId: null,
    effortHours: null,
    cost: null,
    prevention: null,
    effect: null,
  });
  return presentReview(unit.tx, unit.actor, await requireReview(unit.tx, unit.actor, id));
}
