import type { FastifyInstance } from 'fastify';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/charts.ts';
import { chartOf, prepareChart } from './charts.service.ts';

export function charts(app: FastifyInstance): void {
  bind(app, contract.charts, async ({ actor, query, at }) =>
    chartOf(await prepareChart(app.db, actor, query, at), query),
  );
}
