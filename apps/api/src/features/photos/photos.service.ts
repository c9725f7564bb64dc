import type { FastifyRequest } from 'fastify';
import { type Actor, holds, requirePlant } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { newId } from '#api/platform/ids.ts';
import { notFound, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Photo } from '#contracts/failures.ts';
import type { Permission } from '#contracts/permissions.ts';
import type { Tx } from '#db/client.ts';
import { sql, txExecute } from '#db/sql.ts';
import type { CleanPhoto } from './image.ts';

const megabytes = 15;

/** The bytes of the form's `photo` field and its caption. */
export async function readUpload(request: FastifyRequest): Promise<{ bytes: Buffer; caption: string | null }> {
  const part = await request.file({ limits: { fileSize: megabytes * 1024 * 1024 } });
  if (part?.fieldname !== 'photo')
    throw problem('invalid_request', 'Send the picture as the form field `photo`.', [
      { path: 'body/photo', message: 'is missing' },
    ]);
  const bytes = await part.toBuffer().catch((error) => {
    if (error?.statusCode !== 413) throw error;
    throw problem('too_large', `A photo may have at most ${megabytes} MB. Save it smaller and send that.`);
  });
  const field = part.fields.caption;
  const caption = field && 'value' in field ? String(field.value).trim() : '';
  if (caption.length > 200 || caption.includes('\0'))
    throw problem('invalid_request', 'The caption may have at most 200 letters.', [
      { path: 'body/caption', message: 'is too long or holds a character that cannot be stored' },
    ]);
  return { bytes, caption: caption || null };
}

async function reportOf(tx: Tx, actor: Actor, permission: Permission, id: string) {
  const report = await tx.failure.findFirst({
    where: { id },
    select: { id: true, plantId: true, number: true, voidedAt: true },
  });
  if (!report || !holds(actor, 'failures.read', report.plantId)) throw notFound('report');
  requirePlant(actor, permission, report.plantId);
  return report;
}

/** Asked before the upload is read, so that nobody sends a picture in vain. */
export async function requireOpenReport(tx: Tx, actor: Actor, id: string) {
  const report = await reportOf(tx, actor, 'failures.write', id);
  if (report.voidedAt) throw problem('conflict', 'The report is void and stays as it is.');
  return report;
}

const countPhotos = (tx: Tx, failureId: string, plantId: string) =>
  txExecute(
    tx,
    sql`update failure f set photo_count = (select count(*) from photo h
        where h.plant_id = f.plant_id and h.failure_id = f.id and h.removed_at is null)
      where f.id = ${failureId}::uuid and f.plant_id = ${plantId}::uuid`,
  );
const lockReport = (tx: Tx, failureId: string, plantId: string) =>
  txExecute(tx, sql`select from failure where id = ${failureId}::uuid and plant_id = ${plantId}::uuid for update`);

export async function addPhoto(
  unit: Unit,
  failureId: string,
  file: string,
  { full, width, height }: CleanPhoto,
  caption: string | null,
): Promise<Photo> {
  const report = await requireOpenReport(unit.tx, unit.actor, failureId);
  const { plantId, number } = report;
  await lockReport(unit.tx, failureId, plantId);
  const photo = { id: newId(), width, height, bytes: full.length, caption };
  await unit.tx.photo.create({
    data: { ...photo, plantId, failureId, file, addedAt: unit.at, addedBy: unit.actor.id },
  });
  await countPhotos(unit.tx, failureId, plantId);
  const after = { ...photo, addedAt: unit.at.toISOString() };
  await recordChange(unit, {
    action: 'photo added',
    entity: 'failure',
    entityId: failureId,
    label: number,
    plantId,
    before: null,
    after,
  });
  return after;
}

export async function removePhoto(unit: Unit, id: string): Promise<void> {
  const photo = await findPhoto(unit.tx, unit.actor, id);
  const report = await requireOpenReport(unit.tx, unit.actor, photo.failureId);
  await lockReport(unit.tx, report.id, report.plantId);
  await unit.tx.photo.update({
    where: { id_plantId: { id, plantId: photo.plantId } },
    data: { removedAt: unit.at },
  });
  await countPhotos(unit.tx, report.id, report.plantId);
  await recordChange(unit, {
    action: 'photo removed',
    entity: 'failure',
    entityId: report.id,
    label: report.number,
    plantId: report.plantId,
    before: photo,
    after: null,
  });
}

/** A photo for reading; one of a foreign plant is simply not found. */
export async function findPhoto(tx: Tx, actor: Actor, id: string) {
  const photo = await tx.photo.findFirst({ where: { id, removedAt: null } });
  if (!photo || !holds(actor, 'failures.read', photo.plantId)) throw notFound('photo');
  return photo;
}
