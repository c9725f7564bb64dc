import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { endpoint } from '#contracts/shared/endpoint.ts';
import { queryOne, sql } from '#db/sql.ts';
import { bind } from './route.ts';

const health = endpoint({
  method: 'GET',
  path: '/api/v1/health',
  access: 'public',
  tag: 'operations',
  summary: 'Is it migrated and serving',
  response: z.object({ status: z.literal('ok') }),
});

export function reportHealth(app: FastifyInstance): void {
  bind(app, health, async () => {
    await queryOne(app.db.pool, sql`select 1 as one`, z.object({ one: z.int() }));
    return { status: 'ok' as const };
  });
}
