import type { FastifyInstance } from 'fastify';
import { choosePlants } from '#api/platform/actor.ts';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/force.ts';
import { listSamples } from './force.queries.ts';
import * as service from './force.service.ts';
import { detailOf, overviewOf } from './forces.service.ts';

export function force(app: FastifyInstance): void {
  const { db } = app;
  bind(app, contract.listForce, ({ actor, query }) =>
    listSamples(db, choosePlants(actor, 'force.read', query.plant), query),
  );
  bind(app, contract.createForce, ({ body, write }) => write((unit) => service.createSample(unit, body)));
  bind(app, contract.updateForce, ({ params, body, version, write }) =>
    write((unit) => service.updateSample(unit, params.id, version, body)),
  );
  bind(app, contract.voidForce, ({ params, body, version, write }) =>
    write((unit) => service.voidSample(unit, params.id, version, body.reason)),
  );
  bind(app, contract.forceOverview, ({ actor, query, at }) => overviewOf(db, actor, query, at));
  bind(app, contract.forceDetail, ({ actor, params, query, at }) => detailOf(db, actor, params.id, query, at));
}
