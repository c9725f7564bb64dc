import type { Unit } from '#api/platform/unit.ts';
import type { Report } from '#contracts/failures.ts';
import { learnCase } from './learning.repository.ts';

/** Takes the live confirmation of a report out of what was learned, if there is one. */
export async function withdrawConfirmation(
  { tx, at }: Pick<Unit, 'tx' | 'at'>,
  { id, plantId }: Pick<Report, 'id' | 'plantId'>,
): Promise<void> {
  const live = await tx.confirmation.findFirst({ where: { plantId, failureId: id, supersededAt: null } });
  if (!live) return;
  await tx.confirmation.update({ where: { id_plantId: { id: live.id, plantId } }, data: { supersededAt: at } });
  if (live.cause !== 'undetermined')
    await learnCase(tx, plantId, live.cause, live.answers as Record<string, string>, -1);
}
