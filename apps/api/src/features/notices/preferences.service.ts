import type { Actor } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Database } from '#db/client.ts';

/** Mail and calendars are for people; a token has neither. */
export function requirePerson(actor: Actor): void {
  if (actor.kind !== 'person')
    throw problem('not_allowed', 'This belongs to a person. Sign in with an account instead of a token.');
}

export async function readPreferences(db: Database, actor: Actor, mailSetUp: boolean) {
  const [chosen, feed] = await Promise.all([
    db.prisma.noticePreference.findUnique({ where: { personId: actor.id } }),
    db.prisma.calendarFeed.findUnique({ where: { personId: actor.id } }),
  ]);
  return { mail: chosen?.mail ?? true, mailSetUp, feedSince: feed?.createdAt.toISOString() ?? null };
}

export async function changePreferences(unit: Unit, { mail }: { mail: boolean }): Promise<void> {
  const { tx, actor } = unit;
  requirePerson(actor);
  const before = await tx.noticePreference.findUnique({ where: { personId: actor.id } });
  await tx.noticePreference.upsert({
    where: { personId: actor.id },
    create: { personId: actor.id, mail },
    update: { mail },
  });
  await recordChange(unit, {
    action: 'changed',
    entity: 'notice_preference',
    entityId: actor.id,
    label: actor.name,
    plantId: null,
    before: { mail: before?.mail ?? true },
    after: { mail },
  });
}
