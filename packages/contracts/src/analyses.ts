/** The analyses: Pareto, rates, escapes, costs. All take the one filter; every figure names the filter that opens its reports. */
import { z } from 'zod';
import { Change, Period } from './shared/change.ts';
import { Dimension } from './shared/dimension.ts';
import { endpoint } from './shared/endpoint.ts';
import { Estimate, Interval, Reason } from './shared/estimate.ts';
import { AnalysisFilter } from './shared/filter.ts';
import { Currency, Day, Id } from './shared/scalars.ts';
import { Cause, CostCategory, Stage } from './taxonomy.ts';

const tag = 'analyses';
/** A sum of money: whole minor units, of any size that is held exactly. */
const SumMinor = z.int();

export const measures = ['reports', 'terminals', 'booked', 'withEstimates', 'rate'] as const;
export const Measure = z.enum(measures);
export type Measure = z.infer<typeof Measure>;
export const comparisons = ['previous', 'yearAgo', 'none'] as const;
export const Comparison = z.enum(comparisons);

/** A dated exchange rate that was used: one unit of `base` is `rate` units of `quote`. */
export const UsedRate = z.object({ base: Currency, quote: Currency, rate: z.string(), rateOn: Day });

/** What every analysis says of itself. */
export const AnalysisHead = z.object({
  period: Period,
  plants: z.array(z.object({ id: Id, code: z.string() })),
  currency: Currency,
  rates: z.array(UsedRate).describe('empty where all money is in `currency` already'),
  withoutRate: z
    .array(Currency)
    .describe('currencies that could not be converted; their money is left out and said so'),
});

export const Counts = z.object({
  reports: z.int(),
  terminals: z.int(),
  bookedMinor: SumMinor,
  estimateMinor: SumMinor.describe('never added to the booked sum without saying so'),
});
export type Counts = z.infer<typeof Counts>;

export const ParetoBar = Counts.extend({
  key: z.string().describe('value for the filter field of the dimension; `none` where it is empty'),
  label: z.string(),
  value: z
    .number()
    .nullable()
    .describe(
      'of the measure chosen: count, minor units, or failed terminals per million inserted; null with `reason`',
    ),
  reason: Reason.nullable(),
  interval: Interval.nullable().describe('of `value`'),
  share: z.number().nullable(),
  shareInterval: Interval.nullable().describe('simultaneous over all bars'),
  cumulativeShare: z.number().nullable(),
  topProbability: z.number().nullable().describe('probability that it belongs to the top k'),
  rate: Estimate.describe('failed terminals per million inserted'),
  previous: z.number().nullable().describe('`value` in the period compared with'),
  change: Change.nullable().describe('null when nothing is compared'),
});
export type ParetoBar = z.infer<typeof ParetoBar>;

export const ParetoQuery = AnalysisFilter.extend({
  dimension: Dimension.default('cause'),
  measure: Measure.default('reports'),
  compare: Comparison.default('previous'),
  top: z.coerce.number().int().min(1).max(10).default(3).describe('k of the top k'),
  bars: z.coerce.number().int().min(3).max(40).default(12).describe('bars shown before “other”'),
});
export const Pareto = AnalysisHead.extend({
  dimension: Dimension,
  measure: Measure,
  top: z.int(),
  compared: Period.nullable(),
  bars: z.array(ParetoBar),
  other: Counts.extend({
    bars: z.int(),
    value: z.number().nullable(),
    share: z.number().nullable(),
    except: z.array(z.string()).describe('keys to exclude to open its reports'),
  }).nullable(),
  total: Counts.extend({
    value: z.number().nullable(),
    exposureTerminals: z.int(),
    exposureUnits: z.int(),
    withoutCost: z.int().describe('reports without any cost, booked or standard'),
  }),
});
export type Pareto = z.infer<typeof Pareto>;
export const pareto = endpoint({
  method: 'GET',
  path: '/api/v1/analyses/pareto',
  access: 'analyses.read',
  tag,
  summary: 'Which causes, parts, tools … weigh most, and how sure that ranking is',
  query: ParetoQuery,
  response: Pareto,
});

/** Rates: `dpmo` per million terminals inserted (each is one opportunity), `ppm` failed terminals per million units built. */
export const RateBucket = z.object({
  from: Day,
  to: Day,
  reports: z.int(),
  terminals: z.int(),
  exposureTerminals: z.int(),
  exposureUnits: z.int(),
  dpmo: Estimate,
  ppm: Estimate,
});
export const Rates = AnalysisHead.extend({
  bucket: z.enum(['week', 'month']),
  overall: RateBucket,
  buckets: z.array(RateBucket),
  byPlant: z.array(
    z.object({
      plantId: Id,
      plantCode: z.string(),
      reports: z.int(),
      terminals: z.int(),
      exposureTerminals: z.int(),
      exposureUnits: z.int(),
      dpmo: Estimate,
      ppm: Estimate,
    }),
  ),
  sigma: z.number().nullable().describe('customary sigma level of the overall DPMO, one-tail table with 1.5 shift'),
  exposureScope: z
    .enum(['exact', 'wider'])
    .describe(
      '`wider`: the filter narrows failures by something production is not reported by; the denominator is all production of the plants, lines and parts chosen',
    ),
});
export type Rates = z.infer<typeof Rates>;
export const rates = endpoint({
  method: 'GET',
  path: '/api/v1/analyses/rates',
  access: 'analyses.read',
  tag,
  summary: 'Failure rates with exact intervals',
  query: AnalysisFilter.extend({ bucket: z.enum(['week', 'month']).default('week') }),
  response: Rates,
});

export const Escapes = AnalysisHead.extend({
  cells: z.array(Counts.extend({ origin: Stage.nullable(), found: Stage })),
  total: Counts,
  withoutOrigin: Counts.describe('no origin stage yet: they cannot be placed in the matrix'),
  gates: z.array(
    z.object({
      stage: Stage,
      foundHere: z.int(),
      foundLater: z.int(),
      effectiveness: Estimate.describe('reports found here ÷ (found here + made before and found later)'),
    }),
  ),
  passedTwo: Counts.extend({ share: Estimate.describe('share of the reports with a known origin') }),
});
export type Escapes = z.infer<typeof Escapes>;
export const escapes = endpoint({
  method: 'GET',
  path: '/api/v1/analyses/escapes',
  access: 'analyses.read',
  tag,
  summary: 'Where faults were made and where they were found',
  query: AnalysisFilter,
  response: Escapes,
});

export const Costs = AnalysisHead.extend({
  bookedMinor: SumMinor,
  estimateMinor: SumMinor,
  withoutCost: z.int().describe('reports without any cost, booked or standard'),
  avoidable: z.object({
    minor: SumMinor.describe(
      'cost where found − cost of the same fault at the first gate able to see it; an estimate, since the latter is a standard cost',
    ),
    reports: z.int().describe('reports found later than that gate'),
    notComputable: z.array(
      z.object({ reason: z.enum(['no_cause', 'no_origin', 'no_standard_cost', 'no_cost']), reports: z.int() }),
    ),
  }),
  byFound: z.array(
    Counts.extend({
      stage: Stage,
      perTerminal: z
        .object({ bookedMinor: z.number(), reports: z.int() })
        .nullable()
        .describe('geometric mean of the booked cost per terminal, over reports with a booked cost'),
      factor: Estimate.describe('measured escalation factor against the base stage'),
      ruleOfTen: z
        .number()
        .describe('common practice, no source: tenfold for each check slipped through, as a yardstick'),
    }),
  ),
  baseStage: Stage.nullable(),
  byCategory: z.array(z.object({ category: CostCategory, bookedMinor: SumMinor, estimatedMinor: SumMinor })),
  standardMinor: SumMinor.describe(
    'standard costs of reports without any cost item; with the estimated items of all categories it makes `estimateMinor`',
  ),
});
export type Costs = z.infer<typeof Costs>;
export const costs = endpoint({
  method: 'GET',
  path: '/api/v1/analyses/costs',
  access: 'analyses.read',
  tag,
  summary: 'What escapes cost, booked and estimated apart',
  query: AnalysisFilter,
  response: Costs,
});

/** The plants' week. Figures link to `/failures` by `filter`, a query string of the shared filter. */
export const Headline = z.object({
  key: z
    .enum(['reports', 'terminals', 'dpmo', 'booked', 'estimate', 'escaped', 'outside'])
    .describe('`escaped`: passed two or more gates; `outside`: found at a customer or in the field'),
  figure: Estimate,
  previous: Estimate,
  change: Change,
  filter: z.string(),
});
export const Week = AnalysisHead.extend({
  compared: Period,
  headlines: z.array(Headline),
  topCauses: z.array(
    Counts.extend({
      cause: Cause.nullable(),
      share: z.number(),
      shareInterval: Interval,
      topProbability: z.number(),
      change: Change,
      filter: z.string(),
    }),
  ),
  costliest: z.array(
    z.object({
      id: Id,
      number: z.string(),
      plantCode: z.string(),
      cause: Cause.nullable(),
      origin: Stage.nullable(),
      found: Stage,
      gatesPassed: z.int().nullable(),
      terminals: z.int(),
      bookedMinor: SumMinor,
      estimateMinor: SumMinor,
      currency: Currency,
    }),
  ),
  decisions: z.array(
    z.object({
      kind: z.enum([
        'safety_unsorted',
        'outside_unsorted',
        'costly_unsorted',
        'disposition_pending',
        'tool_service_due',
      ]),
      count: z.int(),
      link: z.string(),
    }),
  ),
  gaps: z.array(
    z.object({
      kind: z.enum(['no_cause', 'no_origin', 'no_evidence', 'no_cost', 'no_production']),
      count: z.int(),
      of: z.int(),
      link: z.string(),
    }),
  ),
});
export type Week = z.infer<typeof Week>;
export const week = endpoint({
  method: 'GET',
  path: '/api/v1/week',
  access: 'analyses.read',
  tag,
  summary: 'The week of one or several plants; default: the last full week',
  query: AnalysisFilter.pick({ plant: true, currency: true }).extend({
    start: Day.optional().describe('any day of the week wanted'),
  }),
  response: Week,
});
