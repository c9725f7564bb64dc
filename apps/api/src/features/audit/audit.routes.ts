import type { FastifyInstance } from 'fastify';
import { bind } from '#api/platform/route.ts';
import { listAudit } from '#contracts/audit.ts';
import { readTrail } from './audit.service.ts';

export function audit(app: FastifyInstance): void {
  bind(app, listAudit, ({ actor, query }) => readTrail(app.db, actor, query));
}
