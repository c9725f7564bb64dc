import type { Period } from '#analysis/calendar/period.ts';
import { filterWhere } from '#api/platform/filter.ts';
import type { Dimension } from '#contracts/shared/dimension.ts';
import { empty, join, raw, type Sql, sql } from '#db/sql.ts';
import type { Asked } from './asked.service.ts';
import { carries, fieldsOf, type Grain, splitPeriod } from './carriers.ts';
import { type CellColumn, columnsOf, named, ofCell, ofReport } from './cell-columns.ts';

/** What the cells are told apart by; `dimensions` are those that its expressions read. */
export interface Keys {
  dimensions: readonly Dimension[];
  ofReport: Sql;
  ofCell: Sql;
  /** where only one grain tells them apart */
  grain?: Grain;
}

interface Carrier {
  grain: Grain;
  dimensions: readonly Dimension[];
  rows: Sql;
}

const monthly = (dimension: 'line' | 'housing' | 'terminal' | 'tool', condition: Sql): Carrier => ({
  grain: 'month',
  dimensions: ['plant', dimension],
  rows: sql`failure_month_fact f where ${condition} and`,
});
const carriers: readonly Carrier[] = [
  { grain: 'day', dimensions: ['plant', 'cause'], rows: raw('failure_day_fact f where') },
  { grain: 'week', dimensions: ['plant', 'origin', 'found'], rows: raw('failure_week_fact f where') },
  monthly('line', raw("f.dimension = 'line'")),
  monthly('housing', raw("f.dimension = 'housing'")),
  monthly('terminal', raw("f.dimension = 'terminal'")),
  monthly('tool', raw("f.dimension = 'tool'")),
];

/**
 * The reports that the question counts, as rows `c` to be summed: whole weeks or months from the roll-up that carries what
 * is asked, the rest report by report. Columns: those of the keys, plant_id, and those named.
 */
export function cellsOf(asked: Asked, period: Period, keys: Keys, columns: readonly CellColumn[]): Sql {
  const { filter, scope } = asked;
  const fields = [...fieldsOf(filter), ...keys.dimensions];
  const carrier = carriers.find(
    ({ grain, dimensions }) =>
      carries(dimensions, fields) &&
      columns.every((column) => columnsOf[grain].has(column)) &&
      (keys.grain === undefined || keys.grain === grain),
  );
  const split = carrier && splitPeriod(period, carrier.grain);
  const reports = (part: Period) =>
    sql`select ${keys.ofReport}f.plant_id, ${join(columns.map((column) => named(ofReport[column], column)))}
      from failure_fact f where ${filterWhere({ ...filter, ...part }, scope)}`;
  if (!split) return sql`(${reports(period)}) c`;
  const whole = sql`select ${keys.ofCell}f.plant_id, ${join(columns.map((column) => named(ofCell(column), column)))}
    from ${carrier.rows} ${filterWhere({ ...filter, ...split.whole }, scope)}`;
  return sql`(${join([whole, ...split.ends.map(reports)], ' union all ')}) c`;
}

export const noKeys: Keys = { dimensions: [], ofReport: empty, ofCell: empty };
