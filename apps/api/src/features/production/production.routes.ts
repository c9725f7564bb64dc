import type { FastifyInstance } from 'fastify';
import { choosePlants } from '#api/platform/actor.ts';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/production.ts';
import { listRows } from './production.queries.ts';
import * as service from './production.service.ts';

export function production(app: FastifyInstance): void {
  bind(app, contract.listProduction, ({ actor, query }) =>
    listRows(app.db, choosePlants(actor, 'production.read', query.plant), query),
  );
  bind(app, contract.putProduction, ({ body, write }) => write((unit) => service.putProduction(unit, body.rows)));
  bind(app, contract.updateProduction, ({ params, body, version, write }) =>
    write((unit) => service.correctProduction(unit, params.id, version, body)),
  );
}
