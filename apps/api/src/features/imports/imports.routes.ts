import { createReadStream } from 'node:fs';
import { rm, stat } from 'node:fs/promises';
import type { FastifyInstance } from 'fastify';
import { notFound } from '#api/platform/problems.ts';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/imports.ts';
import { findJob, markInterrupted } from './imports.repository.ts';
import * as service from './imports.service.ts';
import { createRunner } from './runner.ts';
import { refusedPath } from './upload.ts';

export function imports(app: FastifyInstance): void {
  const { db, config } = app;
  const runner = createRunner((error) => app.log.error(error));
  app.addHook('onReady', async () => void (await markInterrupted(db)));
  app.addHook('preClose', () => runner.close());

  bind(app, contract.listImports, ({ actor, query }) => service.listImports(app, actor, query));
  bind(app, contract.readImport, ({ actor, params }) => service.readImport(app, actor, params.id));
  bind(app, contract.uploadImport, async ({ actor, query, request, write }) => {
    const received = await service.receive(app, actor, request, query);
    const kept = await write((unit) => service.addImport(unit, received));
    if (kept.id !== received.id) await rm(received.uploaded.path, { force: true });
    return kept;
  });
  bind(app, contract.changeLayout, ({ actor, params, version, body }) =>
    service.changeLayoutOf(app, actor, params.id, version, body),
  );
  bind(app, contract.changeMapping, ({ params, version, body, write }) =>
    write((unit) => service.changeMapping(app, unit, params.id, version, body)),
  );
  bind(app, contract.defineValues, ({ params, version, body, write }) =>
    write((unit) => service.defineValues(app, unit, params.id, version, body.values)),
  );
  bind(app, contract.checkImport, ({ actor, at, params, version }) =>
    service.begin(app, runner, actor, at, params.id, version, { mode: 'check', skipRefused: true }),
  );
  bind(app, contract.commitImport, ({ actor, at, params, version, body }) =>
    service.begin(app, runner, actor, at, params.id, version, { mode: 'commit', skipRefused: body.skipRefused }),
  );
  bind(app, contract.cancelImport, ({ actor, params }) => service.cancel(app, runner, actor, params.id));
  bind(app, contract.readRefused, async ({ actor, params, reply }) => {
    await findJob(db.prisma, actor, params.id);
    const path = refusedPath(config.importDir, params.id);
    if (!(await stat(path).catch(() => null))) throw notFound('file of refused rows');
    reply.type('text/csv; charset=utf-8').header('Content-Disposition', 'attachment; filename="refused-rows.csv"');
    return createReadStream(path);
  });
}
