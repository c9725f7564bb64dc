import { type Actor, holds, requirePlant } from '#api/platform/actor.ts';
import { notFound, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Permission } from '#contracts/permissions.ts';
import type { Tx } from '#db/client.ts';
import { lockCase } from './cases.repository.ts';

/** A case for reading; one of a foreign plant is simply not found. */
export async function findCase(tx: Tx, actor: Actor, id: string) {
  const found = await tx.eightDCase.findUnique({ where: { id } });
  if (!found || !holds(actor, 'cases.read', found.plantId)) throw notFound('case');
  return found;
}
export type StoredCase = Awaited<ReturnType<typeof findCase>>;

/** The case as it is before a write, locked until the transaction ends; the actor may write it. */
export async function lockForWrite(unit: Unit, permission: Permission, id: string): Promise<StoredCase> {
  requirePlant(unit.actor, permission, (await findCase(unit.tx, unit.actor, id)).plantId);
  await lockCase(unit.tx, id);
  return findCase(unit.tx, unit.actor, id);
}

/** The same, and the case is still being worked on. */
export async function openForWrite(unit: Unit, permission: Permission, id: string): Promise<StoredCase> {
  const found = await lockForWrite(unit, permission, id);
  if (found.state === 'closed')
    throw problem('conflict', 'The case is closed. Reopen a discipline, with a reason, before anything changes.');
  if (found.state === 'dropped') throw problem('conflict', 'The case was dropped and stays as it is.');
  return found;
}
