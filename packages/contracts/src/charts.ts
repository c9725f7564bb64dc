/** Control charts: what moved beyond noise over the weeks, or from one rare fault to the next. Reports are counted. */
import { z } from 'zod';
import { AnalysisHead } from './analyses.ts';
import { endpoint } from './shared/endpoint.ts';
import { reasons } from './shared/estimate.ts';
import { AnalysisFilter } from './shared/filter.ts';
import { Day, each, Id } from './shared/scalars.ts';

export const chartKinds = ['u', 'c', 'g', 't'] as const;
export const ChartKind = z
  .enum(chartKinds)
  .describe(
    '`u` reports per million terminals by week, `c` reports by full week, `g` terminals inserted from one report to the next, `t` days from one to the next',
  );
export type ChartKind = z.infer<typeof ChartKind>;

/** Named by what they detect. */
export const runRules = [
  'sudden_jump',
  'level_shift',
  'moderate_shift',
  'small_shift',
  'drift',
  'alternation',
  'too_even',
  'two_groups',
] as const;
export const RunRule = z.enum(runRules);
export type RunRule = z.infer<typeof RunRule>;

export const limitModes = ['phase', 'frozen', 'rolling'] as const;
export const LimitMode = z
  .enum(limitModes)
  .describe(
    '`phase`: from all points of a phase, `frozen`: from its first points, `rolling`: from the points before each',
  );
export type LimitMode = z.infer<typeof LimitMode>;

export const ChartsQuery = AnalysisFilter.extend({
  kind: ChartKind.optional().describe('default: the one that suits the data'),
  limits: LimitMode.default('phase'),
  points: z.coerce
    .number()
    .int()
    .min(5)
    .max(104)
    .default(20)
    .describe('points that frozen or rolling limits come from'),
  phaseFrom: each(Day).optional().describe('first days of later phases, repeated'),
  actions: z
    .stringbool()
    .default(true)
    .describe('begin a phase after each corrective or preventive action carried out'),
  rule: z.preprocess(
    (raw) => (raw === undefined ? undefined : Array.isArray(raw) ? raw : String(raw).split(',')),
    z.array(RunRule).max(runRules.length).default(['sudden_jump', 'level_shift']),
  ),
  oneSide: z.coerce
    .number()
    .pipe(z.union([z.literal(8), z.literal(9)]))
    .default(8)
    .describe('points in a row on one side that make a level shift'),
  cusumShift: z.coerce
    .number()
    .min(0.25)
    .max(3)
    .default(1)
    .describe('shift that the cumulative sum is made for, in standard deviations'),
  falseAlarmEvery: z.coerce
    .number()
    .int()
    .min(50)
    .max(5000)
    .default(370)
    .describe('points between false alarms of the cumulative sum, on average'),
});
export type ChartsQuery = z.infer<typeof ChartsQuery>;

const ChartReason = z.enum([...reasons, 'too_many']);
const Direction = z.enum(['up', 'down']).nullable();

const Point = z.object({
  key: z.string(),
  from: Day,
  to: Day.describe('with `from` it opens the reports of a week; of a rare fault `report` does'),
  report: z.object({ id: Id, number: z.string() }).nullable(),
  reports: z.int(),
  terminals: z.int().nullable().describe('inserted in this week, or since the report before; null where not known'),
  value: z.number(),
  centre: z.number(),
  low: z.number().nullable().describe('null: no limit on this side'),
  high: z.number().nullable(),
  phase: z.int(),
  inBaseline: z.boolean(),
  rules: z.array(RunRule).describe('patterns that end here'),
});
export type ChartPointShown = z.infer<typeof Point>;

const Pattern = z.object({
  rule: RunRule,
  fromKey: z.string(),
  atKey: z.string(),
  direction: Direction,
  worse: z.boolean().nullable().describe('more faults, or faults closer together'),
});

export const markerKinds = ['action', 'service', 'reelLot', 'housingLot'] as const;
const Marker = z.object({
  kind: z.enum(markerKinds),
  day: Day,
  label: z.string(),
  id: Id.nullable().describe('of the action or the tool'),
});
export type Marker = z.infer<typeof Marker>;

const Left = z.enum(['too_wide', 'too_many']).describe('`too_wide`: the filter names nothing that they belong to');

const Cusum = z.union([
  z.object({
    slack: z.number(),
    limit: z.number(),
    shift: z.number(),
    falseAlarmEvery: z.number(),
    foundAfter: z.number().describe('points until that shift is found, on average'),
    points: z.array(
      z.object({
        key: z.string(),
        high: z.number(),
        low: z.number(),
        signal: Direction,
        worse: z.boolean().nullable(),
        sinceKey: z.string().nullable(),
      }),
    ),
    reason: z.null(),
  }),
  z.object({ points: z.null(), reason: ChartReason }),
]);

export const Charts = AnalysisHead.extend({
  exposureScope: z
    .enum(['exact', 'wider'])
    .describe('`wider`: production is not reported by all that the filter names'),
  reports: z.int(),
  terminals: z.int().describe('inserted in the period'),
  weeksWithoutProduction: z.int(),
  suggested: z
    .object({
      kind: ChartKind,
      because: z.enum([
        'rare_with_exposure',
        'rare_without_exposure',
        'enough_with_exposure',
        'enough_without_exposure',
      ]),
      reportsPerWeek: z.number(),
      dispersionIndex: z.number().nullable().describe('variation over what counting alone explains; 1 is usual'),
      corrected: z.boolean(),
    })
    .nullable(),
  kind: ChartKind.nullable().describe('the chart drawn; null with `reason`'),
  corrected: z.boolean().describe('limits widened for variation beyond counting'),
  reason: ChartReason.nullable(),
  points: z.array(Point),
  phases: z.array(
    z.object({
      phase: z.int(),
      from: Day,
      centre: z.number(),
      dispersion: z.number(),
      baselinePoints: z.int(),
      because: z.enum(['start', 'action', 'chosen']),
      label: z.string().nullable().describe('the action that began it'),
    }),
  ),
  patterns: z.array(Pattern),
  falseAlarmEvery: z
    .number()
    .nullable()
    .describe(
      'points between false alarms of the rules chosen, on average, in control and with known limits; null: not published',
    ),
  markers: z.array(Marker),
  left: z.object({ service: Left.nullable(), lot: Left.nullable() }).describe('marks that are not drawn, and why'),
  cusum: Cusum,
});
export type Charts = z.infer<typeof Charts>;

export const charts = endpoint({
  method: 'GET',
  path: '/api/v1/analyses/charts',
  access: 'analyses.read',
  tag: 'analyses',
  summary:
    'Control chart of reports: what moved beyond noise, with actions, tool services and new lots on the time axis',
  query: ChartsQuery,
  response: Charts,
});
