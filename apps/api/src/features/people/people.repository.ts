import { newId } from '#api/platform/ids.ts';
import { unknownReference } from '#api/platform/problems.ts';
import type { Grant } from '#contracts/people.ts';
import type { Tx } from '#db/client.ts';
import { sql, txExecute } from '#db/sql.ts';

export async function grantsOf(tx: Tx, personId: string): Promise<Grant[]> {
  const rows = await tx.roleGrant.findMany({ where: { personId }, orderBy: { id: 'asc' } });
  return rows.map(({ role, plantId }) => ({ role, plantId }));
}

/** Replaces the roles of a person or a token. Every plant named must exist. */
export async function replaceGrants(
  tx: Tx,
  holder: { personId: string } | { tokenId: string },
  grants: readonly Grant[],
): Promise<void> {
  const plantIds = [...new Set(grants.flatMap(({ plantId }) => plantId ?? []))];
  if ((await tx.plant.count({ where: { id: { in: plantIds } } })) !== plantIds.length)
    throw unknownReference('grants', 'plant');
  const distinct = new Map(grants.map((grant) => [`${grant.role} ${grant.plantId}`, grant]));
  await tx.roleGrant.deleteMany({ where: holder });
  await tx.roleGrant.createMany({
    data: [...distinct.values()].map(({ role, plantId }) => ({ id: newId(), ...holder, role, plantId })),
  });
}

/** One change of people at a time, so that two administrators cannot remove each other at the same moment. */
export async function lockAdministration(tx: Tx): Promise<void> {
  await txExecute(tx, sql`select pg_advisory_xact_lock(hashtext('people'))`);
}
