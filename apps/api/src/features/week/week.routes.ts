import type { FastifyInstance } from 'fastify';
import { prepare } from '#api/features/analyses/asked.service.ts';
import { weekAsked } from '#api/features/analyses/period.rules.ts';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/analyses.ts';
import { weekOf } from './week.service.ts';

export function week(app: FastifyInstance): void {
  bind(app, contract.week, async ({ actor, query: { start, ...query }, at }) => {
    const asked = await prepare(app.db, actor, query, at, (own) => weekAsked(start, at, own));
    return weekOf(asked, query.plant);
  });
}
