import type { FastifyInstance } from 'fastify';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/gates.ts';
import { gatesAsked } from './gates.service.ts';

export function gates(app: FastifyInstance): void {
  bind(app, contract.gates, ({ actor, query, at }) => gatesAsked(app.db, actor, query, at));
}
