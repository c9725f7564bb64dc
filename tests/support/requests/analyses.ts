import { type Example, filtered } from './example.ts';

const period = '&from=2026-06-01&to=2026-06-15';

export const analysisRequests: Record<string, Example> = {
  'GET /api/v1/analyses/pareto': filtered(period),
  'GET /api/v1/analyses/rates': filtered(period),
  'GET /api/v1/analyses/escapes': filtered(period),
  'GET /api/v1/analyses/costs': filtered(period),
  'GET /api/v1/analyses/charts': filtered(period),
  'GET /api/v1/analyses/signals': filtered(period),
  'GET /api/v1/week': filtered(),
  'GET /api/v1/audit': filtered(),
};
