import type { Actor } from '#api/platform/actor.ts';
import { holds, requirePlant } from '#api/platform/actor.ts';
import { newId } from '#api/platform/ids.ts';
import { notFound, problem, unknownReference } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import { type ActionEvidence, isClosed } from '#contracts/actions.ts';
import type { Tx } from '#db/client.ts';
import type { Prisma } from '#db/generated/client.ts';
import { findEvidence } from './action.queries.ts';
import type { StoredFile } from './evidence-files.ts';
import { openForWrite, requireAction } from './read.service.ts';
import { auditAction } from './write.ts';

async function add(
  unit: Unit,
  actionId: string,
  data: Pick<Prisma.ActionEvidenceUncheckedCreateInput, 'kind' | 'text' | 'failureId' | 'file' | 'fileName' | 'bytes'>,
): Promise<ActionEvidence> {
  const { tx, actor, at } = unit;
  const action = await openForWrite(unit, actionId);
  if (isClosed(action.state)) throw problem('conflict', 'The action is closed. Open it again first, with a reason.');
  const id = newId();
  await tx.actionEvidence.create({ data: { id, actionId, ...data, addedAt: at, addedBy: actor.name } });
  const added = (await findEvidence(tx, actionId)).find((one) => one.id === id)!;
  await auditAction(unit, 'evidence added', null, { ...action, ...{ added } });
  return added;
}

/** Words or a report of the plant that show what was done. */
export async function addEvidence(
  unit: Unit,
  actionId: string,
  { text, failureId }: { text: string | null; failureId: string | null },
) {
  if (failureId) {
    const action = await requireAction(unit.tx, unit.actor, actionId, unit.at);
    const report = await unit.tx.failure.findFirst({
      where: { id: failureId, plantId: action.plantId, voidedAt: null },
    });
    if (!report) throw unknownReference('failureId', 'report');
  }
  return add(unit, actionId, { kind: failureId ? 'report' : 'text', text, failureId });
}

export const addFile = (
  unit: Unit,
  actionId: string,
  { kind, file, name, bytes, caption }: StoredFile & { caption: string | null },
) => add(unit, actionId, { kind, file, fileName: name, bytes, text: caption });

/** Asked before an upload is read, so that nobody sends a file in vain. */
export async function requireOpenAction(tx: Tx, actor: Actor, id: string, at: Date): Promise<void> {
  const action = await requireAction(tx, actor, id, at);
  requirePlant(actor, 'actions.write', action.plantId);
  if (isClosed(action.state)) throw problem('conflict', 'The action is closed. Open it again first, with a reason.');
}

/** A file for reading; one of a foreign plant is simply not found. */
export async function findFile(tx: Tx, actor: Actor, id: string) {
  const found = await tx.actionEvidence.findFirst({ where: { id, removedAt: null, file: { not: null } } });
  const action = found && (await tx.action.findUnique({ where: { id: found.actionId }, select: { plantId: true } }));
  if (!found?.file || !action || !holds(actor, 'actions.read', action.plantId)) throw notFound('file');
  return { file: found.file, kind: found.kind, name: found.fileName ?? 'file' };
}

export async function removeEvidence(unit: Unit, id: string): Promise<void> {
  const { tx, at } = unit;
  const found = await tx.actionEvidence.findFirst({ where: { id, removedAt: null } });
  if (!found) throw notFound('evidence');
  const action = await openForWrite(unit, found.actionId);
  if (isClosed(action.state) || action.state === 'carried_out')
    throw problem('conflict', 'It was carried out on this evidence. Take it back or open it again first.');
  await tx.actionEvidence.update({ where: { id }, data: { removedAt: at } });
  await auditAction(unit, 'evidence removed', { ...action, ...{ removed: found } }, action);
}
