import { requireGroup } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { newId } from '#api/platform/ids.ts';
import type { Unit } from '#api/platform/unit.ts';

/** What waits goes out at the next run; what was given up gets as long as new mail. */
export async function retryMail(unit: Unit): Promise<{ retried: number }> {
  requireGroup(unit.actor, 'people.write');
  const { count: retried } = await unit.tx.mail.updateMany({
    where: { state: { in: ['waiting', 'given_up'] } },
    data: { state: 'waiting', nextTryAt: unit.at, queuedAt: unit.at, settledAt: null, tries: 0 },
  });
  await recordChange(unit, {
    action: 'tried again',
    entity: 'mail',
    entityId: newId(),
    label: String(retried),
    plantId: null,
    before: null,
    after: { retried },
  });
  return { retried };
}
