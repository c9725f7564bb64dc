import type { FastifyInstance } from 'fastify';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/failures.ts';
import { cleanPhoto } from './image.ts';
import { openPhoto, storePhoto } from './photo-files.ts';
import * as service from './photos.service.ts';

export function photos(app: FastifyInstance): void {
  const { db, config } = app;

  bind(app, contract.addPhoto, async ({ actor, params, request, write }) => {
    await service.requireOpenReport(db.prisma, actor, params.id);
    const { bytes, caption } = await service.readUpload(request);
    const photo = await cleanPhoto(bytes);
    const file = await storePhoto(config.photoDir, photo.full, photo.small);
    return write((unit) => service.addPhoto(unit, params.id, file, photo, caption));
  });
  bind(app, contract.readPhoto, async ({ actor, params, query, reply }) => {
    const { file } = await service.findPhoto(db.prisma, actor, params.id);
    const picture = await openPhoto(config.photoDir, file, query.size);
    reply.type('image/jpeg').header('Cache-Control', 'private, max-age=31536000, immutable');
    return picture;
  });
  bind(app, contract.removePhoto, ({ params, write }) => write((unit) => service.removePhoto(unit, params.id)));
}
