import type { FastifyInstance } from 'fastify';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/maturity.ts';
import { maturityOf } from './maturity.service.ts';

export function maturity(app: FastifyInstance): void {
  bind(app, contract.maturity, ({ actor, query, at }) => maturityOf(app.db, actor, query, at));
}
