/** What every analysis counts of a group of reports. */
import { z } from 'zod';
import type { WeightedSum } from '#analysis/rates/weighted-poisson-interval.ts';
import { raw, type Sql, sql } from '#db/sql.ts';

export type MoneyMeasure = 'booked' | 'withEstimates';
const moneyOf: Record<MoneyMeasure, Sql> = {
  booked: raw('f.booked_minor'),
  withEstimates: raw('(f.booked_minor + f.estimate_minor)'),
};

export const Sums = z.object({
  plant_id: z.string(),
  reports: z.number(),
  terminals: z.number(),
  terminals_squared: z.number(),
  terminals_largest: z.number(),
  booked: z.number(),
  estimate: z.number(),
  without_cost: z.number(),
});
export type Sums = z.infer<typeof Sums>;

/** Sums per plant over `failure_fact f`, money in the plant's currency. */
export const sumColumns = sql`f.plant_id, count(*)::int as reports, sum(f.terminals)::bigint as terminals,
  sum(f.terminals::float8 * f.terminals) as terminals_squared, max(f.terminals) as terminals_largest,
  sum(f.booked_minor)::bigint as booked, sum(f.estimate_minor)::bigint as estimate,
  (count(*) filter (where not f.costed))::int as without_cost`;

export const MoneySpread = z.object({ money_squared: z.number(), money_largest: z.number() });

/** How the money of one measure is spread over the reports. */
export const spreadColumns = (measure: MoneyMeasure): Sql =>
  sql`sum(${moneyOf[measure]}::float8 ^ 2) as money_squared, max(${moneyOf[measure]})::bigint as money_largest`;

const total = <Row>(rows: readonly Row[], value: (row: Row) => number) =>
  rows.reduce((sum, row) => sum + value(row), 0);

export const reportsIn = (rows: readonly Sums[]) => total(rows, (row) => row.reports);
export const terminalsIn = (rows: readonly Sums[]) => total(rows, (row) => row.terminals);
export const withoutCostIn = (rows: readonly Sums[]) => total(rows, (row) => row.without_cost);
export const bookedIn = (rows: readonly Sums[]) =>
  rows.map(({ plant_id: plantId, booked: minor }) => ({ plantId, minor }));
export const estimatesIn = (rows: readonly Sums[]) =>
  rows.map(({ plant_id: plantId, estimate: minor }) => ({ plantId, minor }));

/** Reports as a weighted sum: each weighs one. */
export const reportWeights = (rows: readonly Sums[]): WeightedSum => {
  const reports = reportsIn(rows);
  return { sum: reports, sumOfSquares: reports, largest: 1 };
};

export const terminalWeights = (rows: readonly Sums[]): WeightedSum => ({
  sum: terminalsIn(rows),
  sumOfSquares: total(rows, (row) => row.terminals_squared),
  largest: rows.reduce((largest, row) => Math.max(largest, row.terminals_largest), 0),
});
