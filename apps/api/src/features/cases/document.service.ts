import type { FastifyInstance } from 'fastify';
import { readEffect } from '#api/features/actions/effects/effect.service.ts';
import { readPhoto } from '#api/features/photos/photo-files.ts';
import type { Actor } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import type { Picture } from '#api/platform/document/blocks.ts';
import { unreadableScripts } from '#api/platform/document/letters.ts';
import { type Masked, maskOthers } from '#api/platform/document/mask.ts';
import { renderDocx } from '#api/platform/document/render-docx.ts';
import { renderPdf } from '#api/platform/document/render-pdf.ts';
import { storeFile } from '#api/platform/files/stored-files.ts';
import { newId } from '#api/platform/ids.ts';
import { notFound, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Attachment, KeptDocument, keepDocument as keepEndpoint } from '#contracts/cases.ts';
import type { Output } from '#contracts/shared/endpoint.ts';
import type { Tx } from '#db/client.ts';
import type { Prisma } from '#db/generated/client.ts';
import { documentContent } from './document.content.ts';
import { headOf, otherCustomers, picturesOf, promisedOf } from './document.queries.ts';
import type { DocumentSource } from './document.source.ts';
import { findCase, lockForWrite } from './open-case.service.ts';
import { readCaseIn } from './read.service.ts';

type Format = 'pdf' | 'docx';

async function chosenPictures(app: FastifyInstance, tx: Tx, it: DocumentSource['case']): Promise<Picture[]> {
  const { photoIds, attachmentIds } = it.parts.document.content;
  const photos = await picturesOf(tx, it.id, photoIds);
  const attached = await tx.eightDAttachment.findMany({
    where: { caseId: it.id, removedAt: null, width: { not: null }, id: { in: attachmentIds } },
    orderBy: { id: 'asc' },
  });
  const all = [
    ...photos.map((photo) => ({ ...photo, caption: photo.caption ?? photo.number })),
    ...attached.map((file) => ({
      ...{ file: file.file, width: file.width!, height: file.height! },
      caption: file.caption ?? file.name,
    })),
  ];
  return Promise.all(
    all.map(async ({ file, width, height, caption }) => ({
      jpeg: await readPhoto(app.config.photoDir, file),
      ...{ width, height, caption },
    })),
  );
}

/** Everything the document is made from, read at one moment. */
async function readSource(app: FastifyInstance, tx: Tx, actor: Actor, id: string, at: Date): Promise<DocumentSource> {
  const it = await readCaseIn(tx, actor, id);
  const choice = it.parts.document.content;
  const head = (await headOf(tx, id))!;
  const actions = await promisedOf(tx, id);
  const effects: DocumentSource['effects'][number][] = [];
  for (const action of actions.filter(({ planned }) => planned)) {
    const effect = await readEffect(tx, actor, action.id, at);
    if (effect) effects.push({ title: action.title, effect });
  }
  return {
    ...{ case: it, choice, head, actions, effects, madeAt: at },
    locale: choice.locale ?? head.locale,
    paper: choice.paper ?? head.paper,
    today: new Intl.DateTimeFormat('sv-SE', { timeZone: head.zone }).format(at),
    pictures: await chosenPictures(app, tx, it),
    files: it.attachments.filter((file: Attachment) => file.width === null && choice.attachmentIds.includes(file.id)),
  };
}

/** The document's content with what was taken out of it. */
async function compose(app: FastifyInstance, tx: Tx, actor: Actor, id: string, at: Date) {
  const source = await readSource(app, tx, actor, id, at);
  const customers = await otherCustomers(tx, source.case.customerId);
  const masked: Masked[] = [];
  const content = documentContent(source, (text) => {
    const clean = maskOthers(text, { customers, locale: source.locale });
    masked.push(...clean.masked);
    return clean.text;
  });
  return { source, content, masked };
}

const render = { pdf: renderPdf, docx: renderDocx };

export async function makeDocument(app: FastifyInstance, actor: Actor, id: string, format: Format, at: Date) {
  const { source, content } = await compose(app, app.db.prisma, actor, id, at);
  return { bytes: await render[format](content), fileName: source.case.number };
}

export async function checkDocument(app: FastifyInstance, actor: Actor, id: string, at: Date) {
  const { source, content, masked } = await compose(app, app.db.prisma, actor, id, at);
  const times = new Map<string, Masked & { times: number }>();
  for (const it of masked) {
    const known = times.get(`${it.kind} ${it.words}`);
    times.set(`${it.kind} ${it.words}`, { ...it, times: (known?.times ?? 0) + 1 });
  }
  return {
    locale: source.locale,
    paper: source.paper,
    customer: source.head.customerName,
    masked: [...times.values()],
    unreadable: unreadableScripts(JSON.stringify({ ...content, blocks: content.blocks.map(textsOf) })),
  };
}

const textsOf = (block: DocumentBlock) =>
  block.kind === 'pictures' ? block.pictures.map(({ caption }) => caption) : block;
type DocumentBlock = ReturnType<typeof documentContent>['blocks'][number];

/** Keeps the very file that goes out, with its hash, who gets it and when. */
export async function keepDocument(
  app: FastifyInstance,
  unit: Unit,
  id: string,
  { format, recipient, note }: NonNullable<Output<typeof keepEndpoint.body>>,
): Promise<KeptDocument> {
  const { tx, actor, at } = unit;
  const found = await lockForWrite(unit, 'cases.write', id);
  if (found.state === 'dropped') throw problem('conflict', 'The case was dropped and stays as it is.');
  const { source, content } = await compose(app, tx, actor, id, at);
  const bytes = await render[format](content);
  const sha256 = await storeFile(app.config.fileDir, bytes);
  const last = await tx.eightDDocument.aggregate({ where: { caseId: id }, _max: { revision: true } });
  const row = {
    ...{ id: newId(), format, recipient, note, sha256, bytes: bytes.length, keptBy: actor.name },
    ...{ locale: source.locale, paper: source.paper, revision: (last._max.revision ?? 0) + 1 },
  };
  await tx.eightDDocument.create({
    data: { ...row, caseId: id, keptAt: at, selection: source.choice as Prisma.InputJsonObject },
  });
  await recordChange(unit, {
    ...{ action: 'document kept', entity: 'case', entityId: id, label: found.number, plantId: found.plantId },
    before: null,
    after: row,
  });
  return { ...row, keptAt: at.toISOString() };
}

/** A kept document for reading; one of a foreign plant is simply not found. */
export async function findKept(tx: Tx, actor: Actor, id: string) {
  const kept = await tx.eightDDocument.findUnique({ where: { id } });
  if (!kept) throw notFound('document');
  const found = await findCase(tx, actor, kept.caseId).catch(() => {
    throw notFound('document');
  });
  return { ...kept, fileName: `${found.number}-${kept.revision}` };
}
