import { cleanPhoto } from '#api/features/photos/image.ts';
import { storePhoto } from '#api/features/photos/photo-files.ts';
import type { Actor } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { documentKind, looksLikePicture } from '#api/platform/files/file-kind.ts';
import type { ReceivedFile } from '#api/platform/files/receive-file.ts';
import { storeFile } from '#api/platform/files/stored-files.ts';
import { newId } from '#api/platform/ids.ts';
import { notFound, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import { Discipline, type ProofLink, type WhyTree } from '#contracts/case-parts.ts';
import type { Attachment } from '#contracts/cases.ts';
import type { Tx } from '#db/client.ts';
import { readParts } from './cases.repository.ts';
import { requireUnused } from './links.service.ts';
import { findCase, openForWrite } from './open-case.service.ts';
import { requireUnsigned } from './parts.service.ts';

interface Folders {
  photoDir: string;
  fileDir: string;
}
interface Kept {
  file: string;
  mediaType: string;
  bytes: number;
  width: number | null;
  height: number | null;
}

/** Keeps the file: a picture made anew without its metadata, a document as it is. */
export async function keepFile({ photoDir, fileDir }: Folders, { bytes }: ReceivedFile): Promise<Kept> {
  if (looksLikePicture(bytes)) {
    const { full, small, width, height } = await cleanPhoto(bytes);
    const file = await storePhoto(photoDir, full, small);
    return { file, mediaType: 'image/jpeg', bytes: full.length, width, height };
  }
  const kind = await documentKind(bytes);
  if (!kind)
    throw problem(
      'unreadable_file',
      'This kind of file is not taken. Send a JPEG, PNG or WebP picture, a PDF, an XLSX, DOCX or PPTX without macros, or plain text.',
    );
  const file = await storeFile(fileDir, bytes);
  return { file, mediaType: kind.mediaType, bytes: bytes.length, width: null, height: null };
}

const fault = (field: string, message: string) =>
  problem('invalid_request', `The form field \`${field}\` ${message}.`, [{ path: `body/${field}`, message }]);

export async function addAttachment(unit: Unit, caseId: string, sent: ReceivedFile, kept: Kept): Promise<Attachment> {
  const discipline = Discipline.safeParse(Number(sent.fields.discipline || Number.NaN));
  if (!discipline.success) throw fault('discipline', 'must be a number from 0 to 8, before the file');
  const caption = sent.fields.caption || null;
  if (caption && (caption.length > 200 || caption.includes('\0')))
    throw fault('caption', 'may have at most 200 letters');
  const found = await openForWrite(unit, 'cases.write', caseId);
  await requireUnsigned(unit, caseId, discipline.data);
  const { file, ...facts } = kept;
  const row = {
    id: newId(),
    discipline: discipline.data,
    name: sent.name,
    ...facts,
    caption,
    addedBy: unit.actor.name,
  };
  await unit.tx.eightDAttachment.create({ data: { ...row, file, caseId, addedAt: unit.at } });
  await recordChange(unit, {
    ...{ action: 'file added', entity: 'case', entityId: caseId, label: found.number, plantId: found.plantId },
    before: null,
    after: { ...row, sha256: file },
  });
  return { ...row, addedAt: unit.at.toISOString() };
}

/** A file of a case for reading; one of a foreign plant is simply not found. */
export async function findAttachment(tx: Tx, actor: Actor, id: string) {
  const attachment = await tx.eightDAttachment.findFirst({ where: { id, removedAt: null } });
  if (!attachment) throw notFound('file');
  await findCase(tx, actor, attachment.caseId).catch(() => {
    throw notFound('file');
  });
  return attachment;
}

export async function removeAttachment(unit: Unit, id: string): Promise<void> {
  const { tx, at } = unit;
  const attachment = await findAttachment(tx, unit.actor, id);
  const found = await openForWrite(unit, 'cases.write', attachment.caseId);
  await requireUnsigned(unit, found.id, Discipline.parse(attachment.discipline));
  const parts = await readParts(tx, found.id);
  const trees = [parts.occurrence, parts.non_detection, parts.system].map((it) => it.content as WhyTree);
  requireUnused(trees, (link: ProofLink) => link.kind === 'attachment' && link.attachmentId === id);
  await tx.eightDAttachment.update({ where: { id }, data: { removedAt: at } });
  await recordChange(unit, {
    ...{ action: 'file removed', entity: 'case', entityId: found.id, label: found.number, plantId: found.plantId },
    before: attachment,
    after: null,
  });
}
