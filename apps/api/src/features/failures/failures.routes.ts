import type { FastifyInstance } from 'fastify';
import { hiddenFrom, veil } from '#api/features/evidence/blind.service.ts';
import { choosePlants, requirePlant } from '#api/platform/actor.ts';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/failures.ts';
import { cavityCounts } from './cavities.queries.ts';
import * as costs from './costs.service.ts';
import { exportReports } from './export.ts';
import * as service from './failures.service.ts';
import * as list from './list.queries.ts';
import { recentMarks } from './marks.queries.ts';
import { readReport } from './open-report.service.ts';
import * as saved from './saved-filters.service.ts';
import { sortReport } from './sorting.service.ts';

const media = {
  csv: 'text/csv; charset=utf-8',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
};

export function failures(app: FastifyInstance): void {
  const { db } = app;

  bind(app, contract.listReports, async ({ actor, query }) => {
    const scope = choosePlants(actor, 'failures.read', query.plant);
    const [page, hidden] = await Promise.all([list.listReports(db, scope, query), hiddenFrom(db.prisma, actor)]);
    return { ...page, items: page.items.map((row) => veil(row, hidden)) };
  });
  bind(app, contract.countReports, ({ actor, query }) =>
    list.countReports(db, choosePlants(actor, 'failures.read', query.plant), query),
  );
  bind(app, contract.exportReports, async ({ actor, query, at, reply }) => {
    const scope = choosePlants(actor, 'failures.read', query.plant);
    const file = await exportReports(db, scope, query, actor.locale, await hiddenFrom(db.prisma, actor));
    const name = `failures-${at.toISOString().slice(0, 10)}.${query.format}`;
    reply.type(media[query.format]).header('Content-Disposition', `attachment; filename="${name}"`);
    return file;
  });
  bind(app, contract.suggestMarks, async ({ actor, query }) => {
    requirePlant(actor, 'failures.read', query.plantId);
    return { items: await recentMarks(db, query) };
  });
  bind(app, contract.cavityCounts, ({ actor, query }) =>
    cavityCounts(db, choosePlants(actor, 'failures.read', query.plant), query),
  );

  bind(app, contract.readReport, ({ actor, params }) => readReport(db, actor, params.id));
  bind(app, contract.createReport, ({ body, write }) => write((unit) => service.createReport(unit, body)));
  bind(app, contract.updateReport, ({ params, body, version, write }) =>
    write((unit) => service.updateReport(unit, params.id, version, body)),
  );
  bind(app, contract.sortReport, ({ params, body, version, write }) =>
    write((unit) => sortReport(unit, params.id, version, body)),
  );
  bind(app, contract.voidReport, ({ params, body, version, write }) =>
    write((unit) => service.voidReport(unit, params.id, version, body.reason)),
  );
  bind(app, contract.addCost, ({ params, body, write }) => write((unit) => costs.addCost(unit, params.id, body)));
  bind(app, contract.removeCost, ({ params, write }) =>
    write((unit) => costs.removeCost(unit, params.id, params.costId)),
  );

  bind(app, contract.listSavedFilters, async ({ actor }) => ({ items: await saved.listSavedFilters(db, actor) }));
  bind(app, contract.saveFilter, ({ body, write }) => write((unit) => saved.saveFilter(unit, body)));
  bind(app, contract.deleteSavedFilter, ({ params, write }) =>
    write((unit) => saved.deleteSavedFilter(unit, params.id)),
  );
}
