import { type Actor, plantsWith } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { hashPassword, hashSecret, newSecret, passwordMatches } from '#api/platform/passwords.ts';
import { problem } from '#api/platform/problems.ts';
import { sessionEnd } from '#api/platform/session.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Me } from '#contracts/people.ts';
import { type Permission, permissions } from '#contracts/permissions.ts';
import type { Locale } from '#contracts/shared/scalars.ts';
import type { Database, Tx } from '#db/client.ts';
import { grantsOf } from './people.repository.ts';

const wrongCredentials = () =>
  problem('wrong_credentials', 'Check both and try again, or ask an administrator for a new password.');
/** Compared against when nobody has the e-mail, so that an answer takes as long either way. */
const decoy = hashPassword(newSecret());

/** Opens a session; returns its secret for the cookie. */
export async function openSession(
  db: Database,
  credentials: { email: string; password: string },
  at: Date,
): Promise<{ secret: string; actor: Actor; email: string }> {
  const person = await db.prisma.person.findUnique({ where: { email: credentials.email } });
  const matches = await passwordMatches(credentials.password, person?.passwordHash ?? (await decoy));
  if (!person || !matches || person.retiredAt) throw wrongCredentials();
  const secret = newSecret();
  await db.prisma.$transaction(async (tx) => {
    await tx.session.deleteMany({ where: { expiresAt: { lt: at } } });
    await tx.session.create({
      data: {
        secretHash: hashSecret(secret),
        personId: person.id,
        createdAt: at,
        lastSeenAt: at,
        expiresAt: sessionEnd(at, at),
      },
    });
    await tx.person.update({ where: { id: person.id }, data: { lastSeenAt: at } });
  });
  const grants = await grantsOf(db.prisma, person.id);
  const actor: Actor = {
    id: person.id,
    kind: 'person',
    name: person.name,
    locale: person.locale,
    mustChangePassword: person.mustChangePassword,
    grants,
  };
  return { secret, actor, email: person.email };
}

export async function closeSession(db: Database, secret: string): Promise<void> {
  await db.prisma.session.deleteMany({ where: { secretHash: hashSecret(secret) } });
}

export async function describeMe(tx: Tx, actor: Actor): Promise<Me> {
  const person = actor.kind === 'person' ? await tx.person.findUniqueOrThrow({ where: { id: actor.id } }) : null;
  const held = (Object.keys(permissions) as Permission[]).map((permission) => {
    const scope = plantsWith(actor, permission);
    return [permission, scope === 'all' ? ('all' as const) : [...scope]] as const;
  });
  return {
    id: actor.id,
    name: person?.name ?? actor.name,
    email: person?.email ?? '',
    locale: (person?.locale ?? 'en') as Locale,
    mustChangePassword: person?.mustChangePassword ?? false,
    grants: actor.grants,
    permissions: Object.fromEntries(held.filter(([, scope]) => scope === 'all' || scope.length > 0)),
  };
}

function requirePerson(actor: Actor): void {
  if (actor.kind !== 'person') throw problem('not_allowed', 'A token has no account of its own. Sign in as a person.');
}

/** Sets the own password and ends every other session. */
export async function changeOwnPassword(
  { tx, actor, at }: Unit,
  passwords: { current: string; next: string },
  keepSecret: string | undefined,
): Promise<void> {
  requirePerson(actor);
  const person = await tx.person.findUniqueOrThrow({ where: { id: actor.id } });
  if (!(await passwordMatches(passwords.current, person.passwordHash)))
    throw problem('invalid_request', 'The present password is wrong.', [{ path: 'body/current', message: 'is wrong' }]);
  if (passwords.current === passwords.next)
    throw problem('invalid_request', 'Choose a password that differs from the present one.', [
      { path: 'body/next', message: 'must differ' },
    ]);
  await tx.person.update({
    where: { id: actor.id },
    data: { passwordHash: await hashPassword(passwords.next), mustChangePassword: false, version: { increment: 1 } },
  });
  await tx.session.deleteMany({
    where: { personId: actor.id, ...(keepSecret && { secretHash: { not: hashSecret(keepSecret) } }) },
  });
  await recordChange(
    { tx, actor, at },
    {
      action: 'password changed',
      entity: 'person',
      entityId: actor.id,
      label: person.email,
      plantId: null,
      before: null,
      after: null,
    },
  );
}

export async function changeOwnPreferences(
  { tx, actor, at }: Unit,
  next: { name: string; locale: Locale },
): Promise<Me> {
  requirePerson(actor);
  const before = await tx.person.findUniqueOrThrow({
    where: { id: actor.id },
    select: { name: true, locale: true, email: true },
  });
  await tx.person.update({ where: { id: actor.id }, data: { ...next, version: { increment: 1 } } });
  await recordChange(
    { tx, actor, at },
    {
      action: 'updated',
      entity: 'person',
      entityId: actor.id,
      label: before.email,
      plantId: null,
      before,
      after: { ...before, ...next },
    },
  );
  return describeMe(tx, actor);
}
