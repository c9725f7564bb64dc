import type { Colleague } from '#contracts/people.ts';
import { allows, type Permission, roles } from '#contracts/permissions.ts';
import type { Tx } from '#db/client.ts';

/** People in service with a role at a plant, by name; with `permission`, those who hold it there. */
export async function listColleagues(tx: Tx, plantId: string, permission?: Permission): Promise<Colleague[]> {
  const grants = await tx.roleGrant.findMany({
    where: {
      personId: { not: null },
      OR: [{ plantId }, { plantId: null }],
      ...(permission && { role: { in: roles.filter((role) => allows(permission, role)) } }),
    },
  });
  const held = Map.groupBy(grants, ({ personId }) => personId as string);
  const people = await tx.person.findMany({
    where: { id: { in: [...held.keys()] }, retiredAt: null },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
    select: { id: true, name: true },
  });
  return people.map(({ id, name }) => ({
    id,
    name,
    roles: roles.filter((role) => held.get(id)?.some((grant) => grant.role === role)),
  }));
}
