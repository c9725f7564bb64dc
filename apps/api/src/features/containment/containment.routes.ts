import type { FastifyInstance } from 'fastify';
import { choosePlants } from '#api/platform/actor.ts';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/containment.ts';
import { listAlerts } from './alerts.queries.ts';
import { answerAlert } from './alerts.service.ts';
import * as service from './containment.service.ts';
import { listContainments } from './list.queries.ts';
import { readContainment } from './open-containment.service.ts';
import { planOf } from './sample-plan.rules.ts';
import * as sorting from './sorting.service.ts';

export function containment(app: FastifyInstance): void {
  const { db } = app;
  bind(app, contract.listContainments, ({ actor, query }) =>
    listContainments(db, choosePlants(actor, 'containment.read', query.plant), query),
  );
  bind(app, contract.planSample, async ({ query }) => planOf(query));
  bind(app, contract.listAlerts, ({ actor, query }) =>
    listAlerts(db, choosePlants(actor, 'containment.read', query.plant), query),
  );
  bind(app, contract.answerAlert, ({ params, version, body, write }) =>
    write((unit) => answerAlert(unit, params.id, version, body)),
  );
  bind(app, contract.readContainment, ({ actor, params }) => readContainment(db.prisma, actor, params.id));
  bind(app, contract.createContainment, ({ body, write }) => write((unit) => service.createContainment(unit, body)));
  bind(app, contract.updateContainment, ({ params, version, body, write }) =>
    write((unit) => service.updateContainment(unit, params.id, version, body)),
  );
  bind(app, contract.statePlaces, ({ params, version, body, write }) =>
    write((unit) => service.statePlaces(unit, params.id, version, body)),
  );
  bind(app, contract.setCleanPoint, ({ params, version, body, write }) =>
    write((unit) => service.setCleanPoint(unit, params.id, version, body)),
  );
  bind(app, contract.closeContainment, ({ params, version, body, write }) =>
    write((unit) => service.closeContainment(unit, params.id, version, body.note)),
  );
  bind(app, contract.reopenContainment, ({ params, version, body, write }) =>
    write((unit) => service.reopenContainment(unit, params.id, version, body.reason)),
  );
  bind(app, contract.addSorting, ({ params, body, write }) =>
    write((unit) => sorting.addSorting(unit, params.id, body)),
  );
  bind(app, contract.withdrawSorting, ({ params, version, body, write }) =>
    write((unit) => sorting.withdrawSorting(unit, params.id, params.sortingId, version, body.reason)),
  );
}
