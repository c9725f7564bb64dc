import type { FastifyInstance } from 'fastify';
import { openPhoto } from '#api/features/photos/photo-files.ts';
import { choosePlants, requirePlant } from '#api/platform/actor.ts';
import { receiveFile } from '#api/platform/files/receive-file.ts';
import { readStoredFile } from '#api/platform/files/stored-files.ts';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/actions.ts';
import * as feed from '#contracts/notices.ts';
import * as service from './actions.service.ts';
import { calendarOf } from './calendar.service.ts';
import { readEffect } from './effects/effect.service.ts';
import { judgedEffects } from './effects/judged.queries.ts';
import { changePlan, proofOf } from './effects/plan.service.ts';
import * as evidence from './evidence.service.ts';
import { captionOf, storeEvidence } from './evidence-files.ts';
import { exportActions } from './export.ts';
import { closeFeed, renewFeed } from './feed.service.ts';
import { countActions, listActions } from './list.queries.ts';
import { requireOrigin } from './origin.service.ts';
import { readAction } from './read.service.ts';
import { moveAction, verifyAction } from './state.service.ts';

const media = {
  csv: 'text/csv; charset=utf-8',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
};

export function actions(app: FastifyInstance): void {
  const { db, config } = app;
  const readable = 'actions.read';

  bind(app, contract.listActions, ({ actor, query: { cursor, limit, ...filter }, at }) =>
    listActions(db, { filter, scope: choosePlants(actor, readable, filter.plant), actor, at }, { cursor, limit }),
  );
  bind(app, contract.countActions, ({ actor, query: filter, at }) =>
    countActions(db, { filter, scope: choosePlants(actor, readable, filter.plant), actor, at }),
  );
  bind(app, contract.exportActions, async ({ actor, query: { format, ...filter }, at, reply }) => {
    const asked = { filter, scope: choosePlants(actor, readable, filter.plant), actor, at };
    const name = `actions-${at.toISOString().slice(0, 10)}.${format}`;
    reply.type(media[format]).header('Content-Disposition', `attachment; filename="${name}"`);
    return exportActions(db, asked, format);
  });
  bind(app, contract.listJudgedEffects, async ({ actor, query }) => ({
    items: await judgedEffects(db, choosePlants(actor, readable, query.plant), query),
  }));
  bind(app, contract.previewEffect, ({ actor, body: { plantId, ...plan }, at }) => {
    requirePlant(actor, readable, plantId);
    return proofOf(db.prisma, plantId, plan, at);
  });

  bind(app, contract.readAction, ({ actor, params, at }) => readAction(db.prisma, actor, params.id, at));
  bind(app, contract.createAction, ({ body, write }) =>
    write(async (unit) => {
      await requireOrigin(unit, body);
      return service.openAction(unit, body);
    }),
  );
  bind(app, contract.updateAction, ({ params, body, version, write }) =>
    write((unit) => service.changeAction(unit, params.id, version, body)),
  );
  bind(app, contract.moveAction, ({ params, body, version, write }) =>
    write((unit) => moveAction(unit, params.id, version, body)),
  );
  bind(app, contract.verifyAction, ({ params, body, version, write }) =>
    write((unit) => verifyAction(unit, params.id, version, body)),
  );

  bind(app, contract.readEffect, async ({ actor, params, at }) => ({
    effect: await readEffect(db.prisma, actor, params.id, at),
  }));
  bind(app, contract.planEffect, async ({ actor, params, body, version, at, write }) => {
    await write((unit) => changePlan(unit, params.id, version, body));
    return { effect: await readEffect(db.prisma, actor, params.id, at) };
  });

  bind(app, contract.addEvidence, ({ params, body, write }) =>
    write((unit) => evidence.addEvidence(unit, params.id, body)),
  );
  bind(app, contract.addEvidenceFile, async ({ actor, params, at, request, write }) => {
    await evidence.requireOpenAction(db.prisma, actor, params.id, at);
    const received = await receiveFile(request);
    const caption = captionOf(received);
    const stored = await storeEvidence(config, received);
    return write((unit) => evidence.addFile(unit, params.id, { ...stored, caption }));
  });
  bind(app, contract.readEvidenceFile, async ({ actor, params, query, reply }) => {
    const { file, kind, name } = await evidence.findFile(db.prisma, actor, params.id);
    reply.header('Cache-Control', 'private, max-age=31536000, immutable');
    if (kind === 'photo') {
      reply.type('image/jpeg');
      return openPhoto(config.photoDir, file, query.size);
    }
    const plain = name.replaceAll(/[^\w .-]/g, '_');
    reply
      .type('application/octet-stream')
      .header('Content-Disposition', `attachment; filename="${plain}"; filename*=UTF-8''${encodeURIComponent(name)}`);
    return readStoredFile(config.fileDir, file);
  });
  bind(app, contract.removeEvidence, ({ params, write }) => write((unit) => evidence.removeEvidence(unit, params.id)));

  const addressOf = (request: { protocol: string; host: string }) =>
    config.publicUrl ?? `${request.protocol}://${request.host}`;
  bind(app, feed.renewFeed, async ({ request, write }) => ({
    url: `${addressOf(request)}/api/v1/calendar-feed/${await write(renewFeed)}.ics`,
  }));
  bind(app, feed.closeFeed, ({ write }) => write(closeFeed));
  bind(app, feed.readFeed, async ({ params, at, request, reply }) => {
    const text = await calendarOf(db, params.file.replace(/\.ics$/, ''), at, addressOf(request));
    reply.type('text/calendar; charset=utf-8').header('Cache-Control', 'private, no-cache');
    return text;
  });
}
