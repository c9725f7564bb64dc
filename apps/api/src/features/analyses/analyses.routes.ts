import type { FastifyInstance } from 'fastify';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/analyses.ts';
import { costsOf, escapesOf, ratesOf } from './analyses.service.ts';
import { prepare } from './asked.service.ts';
import { paretoOf } from './pareto.service.ts';

export function analyses(app: FastifyInstance): void {
  bind(app, contract.pareto, async ({ actor, query, at }) => paretoOf(await prepare(app.db, actor, query, at), query));
  bind(app, contract.rates, async ({ actor, query, at }) =>
    ratesOf(await prepare(app.db, actor, query, at), query.bucket),
  );
  bind(app, contract.escapes, async ({ actor, query, at }) => escapesOf(await prepare(app.db, actor, query, at)));
  bind(app, contract.costs, async ({ actor, query, at }) => costsOf(await prepare(app.db, actor, query, at)));
}
