import type { cleanPhoto } from '#api/features/photos/image.ts';
import { type Actor, holds } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { newId } from '#api/platform/ids.ts';
import { notFound } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Photo } from '#contracts/failures.ts';
import type { Tx } from '#db/client.ts';
import { openComplaint } from './open-complaint.service.ts';

type Clean = Awaited<ReturnType<typeof cleanPhoto>>;

async function record(
  unit: Unit,
  complaint: { id: string; number: string; plantId: string },
  before: object | null,
  after: object | null,
) {
  await recordChange(unit, {
    action: after ? 'photo added' : 'photo removed',
    entity: 'complaint',
    entityId: complaint.id,
    label: complaint.number,
    plantId: complaint.plantId,
    before,
    after,
  });
}

export async function addPhoto(
  unit: Unit,
  id: string,
  file: string,
  { full, width, height }: Clean,
  caption: string | null,
): Promise<Photo> {
  const complaint = await openComplaint(unit, id);
  const photo = { id: newId(), width, height, bytes: full.length, caption };
  await unit.tx.complaintPhoto.create({
    data: { ...photo, plantId: complaint.plantId, complaintId: id, file, addedAt: unit.at, addedBy: unit.actor.id },
  });
  const after = { ...photo, addedAt: unit.at.toISOString() };
  await record(unit, complaint, null, after);
  return after;
}

/** A photo for reading; one of a foreign plant is simply not found. */
export async function findPhoto(tx: Tx, actor: Actor, id: string) {
  const photo = await tx.complaintPhoto.findFirst({ where: { id, removedAt: null } });
  if (!photo || !holds(actor, 'complaints.read', photo.plantId)) throw notFound('photo');
  return photo;
}

export async function removePhoto(unit: Unit, id: string): Promise<void> {
  const photo = await findPhoto(unit.tx, unit.actor, id);
  const complaint = await openComplaint(unit, photo.complaintId);
  await unit.tx.complaintPhoto.update({ where: { id }, data: { removedAt: unit.at } });
  await record(unit, complaint, photo, null);
}
