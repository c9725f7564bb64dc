import type { FastifyInstance } from 'fastify';
import { choosePlants, plantsWith } from '#api/platform/actor.ts';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/lessons.ts';
import { answerAsked } from './answer.service.ts';
import { listAsked, listRows, offered } from './lessons.queries.ts';

export function lessons(app: FastifyInstance): void {
  const { db } = app;

  bind(app, contract.listLessons, ({ actor, query }) => listRows(db, plantsWith(actor, 'cases.read'), query));
  bind(app, contract.offerLessons, async ({ actor, query }) => ({
    items: await offered(db, plantsWith(actor, 'cases.read'), query),
  }));
  bind(app, contract.listReadAcross, ({ actor, query }) =>
    listAsked(db, choosePlants(actor, 'cases.read', query.plant), query),
  );
  bind(app, contract.answerReadAcross, ({ params, body, version, write }) =>
    write((unit) => answerAsked(unit, params.id, version, body)),
  );
}
