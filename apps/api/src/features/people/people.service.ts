import { z } from 'zod';
import { recordChange } from '#api/platform/audit.ts';
import { decodeCursor, toPage } from '#api/platform/cursor.ts';
import { newId } from '#api/platform/ids.ts';
import { hashPassword } from '#api/platform/passwords.ts';
import { changedMeanwhile, notFound, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Grant, Person, PersonInput } from '#contracts/people.ts';
import type { Locale } from '#contracts/shared/scalars.ts';
import type { Database, Tx } from '#db/client.ts';
import { lockAdministration, replaceGrants } from './people.repository.ts';

type Input = z.output<typeof PersonInput>;
interface Row {
  id: string;
  name: string;
  email: string;
  locale: string;
  retiredAt: Date | null;
  mustChangePassword: boolean;
  lastSeenAt: Date | null;
  createdAt: Date;
  version: number;
}

const toPerson = (row: Row, grants: Grant[]): Person => ({
  id: row.id,
  name: row.name,
  email: row.email,
  locale: row.locale as Locale,
  grants,
  retiredAt: row.retiredAt?.toISOString() ?? null,
  mustChangePassword: row.mustChangePassword,
  lastSeenAt: row.lastSeenAt?.toISOString() ?? null,
  createdAt: row.createdAt.toISOString(),
  version: row.version,
});

async function withGrants(tx: Tx, rows: Row[]): Promise<Person[]> {
  const grants = await tx.roleGrant.findMany({
    where: { personId: { in: rows.map(({ id }) => id) } },
    orderBy: { id: 'asc' },
  });
  return rows.map((row) =>
    toPerson(
      row,
      grants.filter(({ personId }) => personId === row.id).map(({ role, plantId }) => ({ role, plantId })),
    ),
  );
}

async function read(tx: Tx, id: string): Promise<Person> {
  const row = await tx.person.findUnique({ where: { id } });
  if (!row) throw notFound('person');
  return (await withGrants(tx, [row]))[0] as Person;
}

export async function listPeople(
  db: Database,
  query: { cursor?: string | undefined; limit: number; q?: string | undefined; retired: boolean },
) {
  const after = decodeCursor(query.cursor, z.tuple([z.string(), z.uuid()]));
  const rows = await db.prisma.person.findMany({
    where: {
      ...(query.retired ? {} : { retiredAt: null }),
      AND: [
        query.q
          ? {
              OR: [
                { name: { contains: query.q, mode: 'insensitive' } },
                { email: { contains: query.q.toLowerCase() } },
              ],
            }
          : {},
        after ? { OR: [{ email: { gt: after[0] } }, { email: after[0], id: { gt: after[1] } }] } : {},
      ],
    },
    orderBy: [{ email: 'asc' }, { id: 'asc' }],
    take: query.limit + 1,
  });
  const { items, next } = toPage(rows, query.limit, (row) => [row.email, row.id]);
  return { items: await withGrants(db.prisma, items), next };
}

export async function createPerson(
  unit: Unit,
  { grants, password, ...fields }: Input & { password: string },
): Promise<Person> {
  const id = newId();
  await unit.tx.person.create({
    data: { id, ...fields, passwordHash: await hashPassword(password), createdAt: unit.at },
  });
  await replaceGrants(unit.tx, { personId: id }, grants);
  const person = await read(unit.tx, id);
  await recordChange(unit, {
    action: 'created',
    entity: 'person',
    entityId: id,
    label: person.email,
    plantId: null,
    before: null,
    after: person,
  });
  return person;
}

/** Changes the row if it still has the version that was read. */
async function change(
  unit: Unit,
  id: string,
  version: number,
  action: string,
  apply: (tx: Tx) => Promise<void>,
): Promise<Person> {
  await lockAdministration(unit.tx);
  const before = await read(unit.tx, id);
  const { count } = await unit.tx.person.updateMany({ where: { id, version }, data: { version: { increment: 1 } } });
  if (count === 0) throw changedMeanwhile();
  await apply(unit.tx);
  const after = await read(unit.tx, id);
  await requireAnAdministrator(unit.tx);
  refuseSelfLockout(unit, before, after);
  await recordChange(unit, {
    action,
    entity: 'person',
    entityId: id,
    label: after.email,
    plantId: null,
    before,
    after,
  });
  return after;
}

const administers = (person: Person): boolean =>
  person.retiredAt === null && person.grants.some((grant) => grant.role === 'administrator' && grant.plantId === null);

/** Nobody shuts the door behind themselves by a slip. */
function refuseSelfLockout(unit: Unit, before: Person, after: Person): void {
  if (unit.actor.id === after.id && administers(before) && !administers(after))
    throw problem(
      'conflict',
      'You cannot take the administrator role from yourself. Ask another administrator to do it.',
    );
}

/** Somebody must be left who can let people in. */
async function requireAnAdministrator(tx: Tx): Promise<void> {
  const grants = await tx.roleGrant.findMany({
    where: { role: 'administrator', plantId: null, personId: { not: null } },
    select: { personId: true },
  });
  const active = await tx.person.count({
    where: { id: { in: grants.flatMap(({ personId }) => personId ?? []) }, retiredAt: null },
  });
  if (active === 0)
    throw problem('conflict', 'This is the last administrator of all plants. Give the role to somebody else first.');
}

export const updatePerson = (unit: Unit, id: string, version: number, { grants, ...fields }: Input): Promise<Person> =>
  change(unit, id, version, 'updated', async (tx) => {
    await tx.person.update({ where: { id }, data: fields });
    await replaceGrants(tx, { personId: id }, grants);
  });

export const resetPassword = (unit: Unit, id: string, version: number, password: string): Promise<Person> =>
  change(unit, id, version, 'password reset', async (tx) => {
    await tx.person.update({
      where: { id },
      data: { passwordHash: await hashPassword(password), mustChangePassword: true },
    });
    await tx.session.deleteMany({ where: { personId: id } });
  });

export const retirePerson = (unit: Unit, id: string, version: number, retired: boolean): Promise<Person> =>
  change(unit, id, version, retired ? 'retired' : 'brought back', async (tx) => {
    await tx.person.update({ where: { id }, data: { retiredAt: retired ? unit.at : null } });
    if (retired) await tx.session.deleteMany({ where: { personId: id } });
  });
