/** The sums that analyses are made of, of one report (`failure_fact f`) and of a roll-up's cell under the same names. */
import { raw, type Sql, sql } from '#db/sql.ts';

const late = sql`f.gate < f.found`;

/** Of one report. Types are those of the roll-ups, so that both can be read as one. */
export const ofReport = {
  reports: raw('1'),
  terminals: raw('f.terminals::bigint'),
  terminals_squared: raw('f.terminals::float8 * f.terminals'),
  terminals_largest: raw('f.terminals'),
  booked: raw('f.booked_minor'),
  booked_squared: raw('f.booked_minor::float8 * f.booked_minor'),
  booked_largest: raw('greatest(f.booked_minor, 0)'),
  estimate: raw('f.estimate_minor'),
  estimate_squared: raw('f.estimate_minor::float8 * f.estimate_minor'),
  estimate_largest: raw('greatest(f.estimate_minor, 0)'),
  total_squared: raw('(f.booked_minor + f.estimate_minor)::float8 * (f.booked_minor + f.estimate_minor)'),
  total_largest: raw('greatest(f.booked_minor + f.estimate_minor, 0)'),
  without_cost: raw('(not f.costed)::int'),
  escaped: raw('coalesce(f.gates_passed >= 2, false)::int'),
  outside: raw("(f.source in ('customer', 'field'))::int"),
  no_origin: raw('(f.origin is null)::int'),
  no_evidence: raw('(not f.evidence)::int'),
  standard: raw('case when f.standard_only then f.estimate_minor else 0 end'),
  priced: raw('(f.booked_minor > 0)::int'),
  log_cost: raw(
    'case when f.booked_minor > 0 then round(1e6 * ln(f.booked_minor::float8 / f.terminals))::bigint else 0 end',
  ),
  log_cost_squared: raw(
    'case when f.booked_minor > 0 then round(1e6 * ln(f.booked_minor::float8 / f.terminals)) ^ 2 else 0 end',
  ),
  late: sql`coalesce(${late}, false)::int`,
  avoidable: sql`case when ${late} and f.costed and f.gate_minor is not null
    then f.booked_minor + f.estimate_minor - f.gate_minor else 0 end`,
  no_cause: raw("(f.cause is null or f.cause = 'undetermined')::int"),
  sorted_without_origin: raw("coalesce(f.cause <> 'undetermined' and f.origin is null, false)::int"),
  late_without_cost: sql`coalesce(${late} and not f.costed, false)::int`,
  late_without_standard: sql`coalesce(${late} and f.costed and f.gate_minor is null, false)::int`,
} as const satisfies Record<string, Sql>;
export type CellColumn = keyof typeof ofReport;

const common = [
  'reports',
  'terminals',
  'terminals_squared',
  'terminals_largest',
  'booked',
  'booked_squared',
  'booked_largest',
  'estimate',
  'total_squared',
  'total_largest',
  'without_cost',
] as const satisfies CellColumn[];
const ofDay = ['estimate_squared', 'estimate_largest', 'escaped', 'outside', 'no_origin', 'no_evidence'] as const;
const ofWeek = [
  'standard',
  'priced',
  'log_cost',
  'log_cost_squared',
  'late',
  'avoidable',
  'no_cause',
  'sorted_without_origin',
  'late_without_cost',
  'late_without_standard',
] as const;
export const columnsOf: Record<'day' | 'week' | 'month', ReadonlySet<CellColumn>> = {
  day: new Set<CellColumn>([...common, ...ofDay]),
  week: new Set<CellColumn>([...common, ...ofWeek]),
  month: new Set<CellColumn>(common),
};

/** Of a cell of a roll-up (`f`); squares are exact there and become what `ofReport` makes of them. */
export const ofCell = (column: CellColumn): Sql =>
  column.endsWith('_squared') ? raw(`f.${column}::float8`) : raw(`f.${column}`);

export const named = (expression: Sql, column: CellColumn): Sql => sql`${expression} as ${raw(`${column}`)}`;
