import { requirePerson } from '#api/features/notices/preferences.service.ts';
import { recordChange } from '#api/platform/audit.ts';
import { hashSecret, newSecret } from '#api/platform/passwords.ts';
import type { Unit } from '#api/platform/unit.ts';

const noted = (unit: Unit, action: string) =>
  recordChange(unit, {
    action,
    entity: 'calendar_feed',
    entityId: unit.actor.id,
    label: unit.actor.name,
    plantId: null,
    before: null,
    after: null,
  });

/** A new secret for the own feed; the one before stops working. Only its hash is kept. */
export async function renewFeed(unit: Unit): Promise<string> {
  requirePerson(unit.actor);
  const secret = newSecret();
  const feed = { secretHash: hashSecret(secret), createdAt: unit.at };
  await unit.tx.calendarFeed.upsert({
    where: { personId: unit.actor.id },
    create: { personId: unit.actor.id, ...feed },
    update: feed,
  });
  await noted(unit, 'renewed');
  return secret;
}

export async function closeFeed(unit: Unit): Promise<void> {
  requirePerson(unit.actor);
  const { count } = await unit.tx.calendarFeed.deleteMany({ where: { personId: unit.actor.id } });
  if (count > 0) await noted(unit, 'closed');
}
