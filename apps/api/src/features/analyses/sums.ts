/** What every analysis counts of a group of reports. */
import { z } from 'zod';
import type { WeightedSum } from '#analysis/rates/weighted-poisson-interval.ts';
import { type Sql, sql } from '#db/sql.ts';
import type { CellColumn } from './cell-columns.ts';

export type MoneyMeasure = 'booked' | 'withEstimates';

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

/** Sums per plant over cells `c`, money in the plant's currency. */
export const sumColumns = sql`c.plant_id, sum(c.reports)::int as reports, sum(c.terminals)::bigint as terminals,
  sum(c.terminals_squared) as terminals_squared, max(c.terminals_largest) as terminals_largest,
  sum(c.booked)::bigint as booked, sum(c.estimate)::bigint as estimate, sum(c.without_cost)::int as without_cost`;
export const summedColumns = [
  'reports',
  'terminals',
  'terminals_squared',
  'terminals_largest',
  'booked',
  'estimate',
  'without_cost',
] as const satisfies CellColumn[];

export const MoneySpread = z.object({ money_squared: z.number(), money_largest: z.number() });

/** How the money of one measure is spread over the reports, and the columns that it takes. */
export const spreads: Record<MoneyMeasure, { sums: Sql; columns: readonly CellColumn[] }> = {
  booked: {
    sums: sql`sum(c.booked_squared) as money_squared, max(c.booked_largest)::bigint as money_largest`,
    columns: ['booked_squared', 'booked_largest'],
  },
  withEstimates: {
    sums: sql`sum(c.total_squared) as money_squared, max(c.total_largest)::bigint as money_largest`,
    columns: ['total_squared', 'total_largest'],
  },
};

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
