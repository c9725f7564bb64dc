import type { FastifyInstance } from 'fastify';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/plant-calendar.ts';
import * as calendar from './plant-calendar.service.ts';
import * as safety from './product-safety.service.ts';

export function plantCalendar(app: FastifyInstance): void {
  const { prisma } = app.db;
  bind(app, contract.readCalendar, ({ actor, params }) => calendar.readCalendar(prisma, actor, params.id));
  bind(app, contract.saveCalendar, ({ params, version, body, write }) =>
    write((unit) => calendar.saveCalendar(unit, params.id, version, body)),
  );
  bind(app, contract.readProductSafety, ({ actor, params }) => safety.readProductSafety(prisma, actor, params.id));
  bind(app, contract.saveProductSafety, ({ params, version, body, write }) =>
    write((unit) => safety.saveProductSafety(unit, params.id, version, body.personId)),
  );
}
