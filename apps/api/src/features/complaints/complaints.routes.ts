import type { FastifyInstance } from 'fastify';
import { cleanPhoto } from '#api/features/photos/image.ts';
import { openPhoto, storePhoto } from '#api/features/photos/photo-files.ts';
import { readUpload } from '#api/features/photos/photos.service.ts';
import { choosePlants, plantsWith, requirePlant } from '#api/platform/actor.ts';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/complaints.ts';
import * as clocks from './clocks.service.ts';
import * as closing from './closing.service.ts';
import * as service from './complaints.service.ts';
import { listDesk } from './desk.service.ts';
import { openComplaint, readComplaint } from './open-complaint.service.ts';
import * as photos from './photos.service.ts';
import * as reports from './reports.service.ts';
import * as safety from './safety.service.ts';
import { findSimilar } from './similar.queries.ts';

export function complaints(app: FastifyInstance): void {
  const { db, config } = app;

  bind(app, contract.listComplaints, ({ actor, query, at }) =>
    listDesk(db, actor, choosePlants(actor, 'complaints.read', query.plant), query, at),
  );
  bind(app, contract.similarCases, async ({ actor, query, at }) => {
    requirePlant(actor, 'complaints.read', query.plantId);
    return { items: await findSimilar(db, plantsWith(actor, 'complaints.read'), query, at) };
  });
  bind(app, contract.readComplaint, ({ actor, params, at }) => readComplaint(db.prisma, actor, params.id, at));
  bind(app, contract.createComplaint, ({ body, write }) => write((unit) => service.createComplaint(unit, body)));
  bind(app, contract.updateComplaint, ({ params, version, body, write }) =>
    write((unit) => service.updateComplaint(unit, params.id, version, body)),
  );

  bind(app, contract.flagSafety, ({ params, version, write }) =>
    write((unit) => safety.flagSafety(unit, params.id, version)),
  );
  bind(app, contract.acknowledgeSafety, ({ params, version, write }) =>
    write((unit) => safety.acknowledgeSafety(unit, params.id, version)),
  );
  bind(app, contract.askUnflag, ({ params, version, body, write }) =>
    write((unit) => safety.askUnflag(unit, params.id, version, body.reason)),
  );
  bind(app, contract.closeComplaint, ({ params, version, body, write }) =>
    write((unit) => closing.closeComplaint(unit, params.id, version, body.note)),
  );
  bind(app, contract.reopenComplaint, ({ params, version, body, write }) =>
    write((unit) => closing.reopenComplaint(unit, params.id, version, body.reason)),
  );
  bind(app, contract.answerConsent, ({ params, version, body, write }) =>
    write((unit) => closing.answerConsent(unit, params.id, params.consentId, version, body)),
  );

  bind(app, contract.pauseClock, ({ params, version, body, write }) =>
    write((unit) => clocks.pauseClock(unit, params.id, params.kind, version, body.reason)),
  );
  bind(app, contract.resumeClock, ({ params, version, body, write }) =>
    write((unit) => clocks.resumeClock(unit, params.id, params.kind, version, body.note)),
  );
  bind(app, contract.answerClock, ({ params, version, body, write }) =>
    write((unit) => clocks.answerClock(unit, params.id, params.kind, version, body)),
  );
  bind(app, contract.handOverClock, ({ params, version, body, write }) =>
    write((unit) => clocks.handOverClock(unit, params.id, params.kind, version, body.ownerId)),
  );

  bind(app, contract.linkReport, ({ params, body, write }) =>
    write((unit) => reports.linkReport(unit, params.id, body.report)),
  );
  bind(app, contract.recordReport, ({ params, body, write }) =>
    write((unit) => reports.recordReport(unit, params.id, body)),
  );
  bind(app, contract.unlinkReport, ({ params, write }) =>
    write((unit) => reports.unlinkReport(unit, params.id, params.reportId)),
  );

  bind(app, contract.addComplaintPhoto, async ({ actor, at, params, request, write }) => {
    await openComplaint({ tx: db.prisma, actor, at }, params.id);
    const { bytes, caption } = await readUpload(request);
    const photo = await cleanPhoto(bytes);
    const file = await storePhoto(config.photoDir, photo.full, photo.small);
    return write((unit) => photos.addPhoto(unit, params.id, file, photo, caption));
  });
  bind(app, contract.readComplaintPhoto, async ({ actor, params, query, reply }) => {
    const { file } = await photos.findPhoto(db.prisma, actor, params.id);
    const picture = await openPhoto(config.photoDir, file, query.size);
    reply.type('image/jpeg').header('Cache-Control', 'private, max-age=31536000, immutable');
    return picture;
  });
  bind(app, contract.removeComplaintPhoto, ({ params, write }) => write((unit) => photos.removePhoto(unit, params.id)));
}
