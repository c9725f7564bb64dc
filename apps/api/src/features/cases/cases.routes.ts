import type { FastifyInstance } from 'fastify';
import { openPhoto } from '#api/features/photos/photo-files.ts';
import { choosePlants } from '#api/platform/actor.ts';
import { receiveFile } from '#api/platform/files/receive-file.ts';
import { readStoredFile } from '#api/platform/files/stored-files.ts';
import { bind } from '#api/platform/route.ts';
import { type PartContent, type PartName, partNames } from '#contracts/case-parts.ts';
import * as contract from '#contracts/cases.ts';
import * as attachments from './attachments.service.ts';
import { listRows } from './case.queries.ts';
import * as service from './cases.service.ts';
import * as documents from './document.service.ts';
import { openForWrite } from './open-case.service.ts';
import { savePart } from './parts.service.ts';
import { readCase, readHistory } from './read.service.ts';
import { reopen, sign } from './signing.service.ts';

export function cases(app: FastifyInstance): void {
  const { db, config } = app;

  bind(app, contract.listCases, ({ actor, query }) =>
    listRows(db, choosePlants(actor, 'cases.read', query.plant), query),
  );
  bind(app, contract.readCase, ({ actor, params }) => readCase(db, actor, params.id));
  bind(app, contract.openCase, async ({ actor, body, write }) =>
    readCase(db, actor, await write((unit) => service.openCase(unit, body))),
  );
  bind(app, contract.updateCase, async ({ actor, params, body, version, write }) => {
    await write((unit) => service.updateCase(unit, params.id, version, body));
    return readCase(db, actor, params.id);
  });
  bind(app, contract.dropCase, async ({ actor, params, body, version, write }) => {
    await write((unit) => service.dropCase(unit, params.id, version, body.reason));
    return readCase(db, actor, params.id);
  });
  for (const name of partNames) bindPart(app, name);
  bind(app, contract.signDiscipline, async ({ actor, params, body, version, write }) => {
    await write((unit) => sign(unit, params.id, params.discipline, version, body.role));
    return readCase(db, actor, params.id);
  });
  bind(app, contract.signForProductSafety, async ({ actor, params, version, write }) => {
    await write((unit) => sign(unit, params.id, 8, version, 'product_safety'));
    return readCase(db, actor, params.id);
  });
  bind(app, contract.reopenDiscipline, async ({ actor, params, body, version, write }) => {
    await write((unit) => reopen(unit, params.id, params.discipline, version, body.reason));
    return readCase(db, actor, params.id);
  });
  bind(app, contract.addComment, ({ params, body, write }) =>
    write((unit) => service.addComment(unit, params.id, body.discipline, body.text)),
  );
  bind(app, contract.caseHistory, ({ actor, params, query }) => readHistory(db, actor, params.id, query));

  bind(app, contract.addAttachment, async ({ actor, params, request, at, write }) => {
    await openForWrite({ tx: db.prisma, actor, at }, 'cases.write', params.id);
    const sent = await receiveFile(request);
    const kept = await attachments.keepFile(config, sent);
    return write((unit) => attachments.addAttachment(unit, params.id, sent, kept));
  });
  bind(app, contract.readAttachment, async ({ actor, params, query, reply }) => {
    const found = await attachments.findAttachment(db.prisma, actor, params.id);
    const name = encodeURIComponent(found.name);
    reply
      .type(found.mediaType)
      .header('Cache-Control', 'private, max-age=31536000, immutable')
      .header('X-Content-Type-Options', 'nosniff');
    if (found.width !== null) return openPhoto(config.photoDir, found.file, query.size);
    reply.header('Content-Disposition', `attachment; filename*=UTF-8''${name}`);
    return readStoredFile(config.fileDir, found.file);
  });
  bind(app, contract.removeAttachment, ({ params, write }) =>
    write((unit) => attachments.removeAttachment(unit, params.id)),
  );

  bind(app, contract.previewDocument, async ({ actor, params, query, at, reply }) => {
    const { bytes, fileName } = await documents.makeDocument(app, actor, params.id, query.format, at);
    return sendDocument(reply, bytes, query.format, fileName);
  });
  bind(app, contract.checkDocument, ({ actor, params, at }) => documents.checkDocument(app, actor, params.id, at));
  bind(app, contract.keepDocument, ({ params, body, write }) =>
    write((unit) => documents.keepDocument(app, unit, params.id, body)),
  );
  bind(app, contract.readKeptDocument, async ({ actor, params, reply }) => {
    const found = await documents.findKept(db.prisma, actor, params.id);
    const bytes = await readStoredFile(config.fileDir, found.sha256);
    return sendDocument(reply, bytes, found.format as 'pdf' | 'docx', found.fileName);
  });
}

function bindPart<Name extends PartName>(app: FastifyInstance, name: Name): void {
  bind(app, contract.savePartOf[name], async ({ actor, params, body, version, write }) => {
    await write((unit) => savePart(unit, params.id, name, version, body as PartContent<Name>));
    return readCase(app.db, actor, params.id);
  });
}

const mediaTypes = {
  pdf: 'application/pdf',
  docx: 'application/vnd.openxmlformats-officedocument.wordprocessingml.document',
} as const;

function sendDocument(
  reply: import('fastify').FastifyReply,
  bytes: Buffer,
  format: keyof typeof mediaTypes,
  name: string,
) {
  const place = format === 'pdf' ? 'inline' : 'attachment';
  reply
    .type(mediaTypes[format])
    .header('Content-Disposition', `${place}; filename="${name}.${format}"`)
    .header('Cache-Control', 'private, no-store');
  return bytes;
}
