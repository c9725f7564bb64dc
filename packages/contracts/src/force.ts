/** Retention and pull-out forces: samples as measured, and what they say of all terminals against the minimum. */
import { z } from 'zod';
import { Period } from './shared/change.ts';
import { endpoint } from './shared/endpoint.ts';
import { Estimate } from './shared/estimate.ts';
import { PageQuery, page } from './shared/paging.ts';
import { Day, Id, IdParams, Instant, Mark, many, Note, Version } from './shared/scalars.ts';
import { ForceKind, ForceUnit } from './taxonomy.ts';

const tag = 'force';
const optional = <Item extends z.ZodType>(item: Item) => item.nullable().default(null);
export const mostValues = 1000;
const Force = z.number().min(0.01).max(10_000);

export const ForceInput = z.object({
  plantId: Id,
  kind: ForceKind,
  day: Day,
  terminalId: Id,
  toolId: optional(Id).describe('that made the crimp'),
  housingId: optional(Id),
  wireId: optional(Id),
  reference: optional(Mark).describe('tells several samples of one day apart'),
  unit: ForceUnit,
  values: z.array(Force).min(1).max(mostValues).describe('single values in `unit`, in the order of measurement'),
  minimum: optional(Force).describe(
    'asked for by drawing or standard, in `unit`; without it the terminal’s minimum retention force holds for retention',
  ),
  note: optional(Note),
});
export type ForceInput = z.output<typeof ForceInput>;

export const ForceSample = ForceInput.extend({
  id: Id,
  plantCode: z.string(),
  terminalCode: z.string(),
  toolCode: z.string().nullable(),
  housingCode: z.string().nullable(),
  wireCode: z.string().nullable(),
  newtons: z.array(z.number()),
  minimumN: z.number().nullable().describe('that holds for the sample, N'),
  below: z.int().describe('values below the minimum'),
  recordedBy: z.string(),
  recordedAt: Instant,
  importId: Id.nullable(),
  version: Version,
});
export type ForceSample = z.infer<typeof ForceSample>;

const Choice = z.object({
  from: Day.optional(),
  to: Day.optional().describe('day after the last day'),
  plant: many(Id).optional(),
  tool: many(Id).optional(),
  housing: many(Id).optional(),
  wire: many(Id).optional(),
});

export const listForce = endpoint({
  method: 'GET',
  path: '/api/v1/force',
  access: 'force.read',
  tag,
  summary: 'List force samples, newest day first',
  query: PageQuery.extend(Choice.shape).extend({
    kind: ForceKind.optional(),
    terminal: many(Id).optional(),
    below: z.stringbool().optional().describe('has a value below its minimum'),
  }),
  response: page(ForceSample),
});
export const createForce = endpoint({
  method: 'POST',
  path: '/api/v1/force',
  access: 'force.write',
  tag,
  write: 'create',
  status: 201,
  summary: 'Enter a force sample',
  body: ForceInput,
  response: ForceSample,
});
export const updateForce = endpoint({
  method: 'PUT',
  path: '/api/v1/force/:id',
  access: 'force.write',
  tag,
  write: 'update',
  summary: 'Correct a force sample',
  params: IdParams,
  body: ForceInput,
  response: ForceSample,
});
export const voidForce = endpoint({
  method: 'PUT',
  path: '/api/v1/force/:id/void',
  access: 'force.write',
  tag,
  write: 'update',
  summary: 'Take a force sample out of lists and analyses; it is kept with the reason',
  params: IdParams,
  body: z.object({ reason: Note.min(1) }),
  status: 204,
});

export const forceMethods = ['normal', 'normal_untested', 'log_normal', 'order_statistic'] as const;
/** What a set of values says of all terminals made and measured like these. */
export const ForceJudgement = z.object({
  values: z.int(),
  samples: z.int(),
  mean: z.number().describe('N'),
  deviation: z.number().describe('standard deviation of the single values, N'),
  smallest: z.number().describe('N'),
  minimumN: z.number().nullable(),
  otherMinimums: z
    .array(z.number())
    .describe('N; samples with another minimum, judged against `minimumN` all the same'),
  belowInSample: z.int().describe('values below the minimum'),
  notJudged: z
    .enum(['no_minimum', 'too_few', 'not_finite'])
    .nullable()
    .describe('why nothing is said of all terminals; then the fields below are null'),
  normality: z
    .object({ statistic: z.number(), adjusted: z.number(), p: z.number() })
    .nullable()
    .describe('Anderson–Darling test; null below eight values'),
  method: z.enum(forceMethods).nullable().describe('what the bound rests on'),
  bound: z.number().nullable().describe('with 95 % confidence 95 % of all terminals hold at least this, N'),
  needed: z.int().nullable().describe('sample size from which a bound could be given without a distribution'),
  meetsMinimum: z.boolean().nullable(),
  capability: Estimate.nullable().describe(
    '(mean − minimum) ÷ 3 standard deviations, in the scale of the method; null where the bound rests on no distribution',
  ),
  below: Estimate.nullable().describe('fraction of all terminals below the minimum, 0 to 1'),
});
export type ForceJudgement = z.infer<typeof ForceJudgement>;

export const ForceGroup = ForceJudgement.extend({
  kind: ForceKind,
  terminalId: Id,
  terminalCode: z.string(),
  newest: Day,
  weakTools: z
    .array(z.string())
    .describe('code and plant of the tools whose own values fall short, where several tools are mixed'),
});
export type ForceGroup = z.infer<typeof ForceGroup>;

export const forceOverview = endpoint({
  method: 'GET',
  path: '/api/v1/analyses/force',
  access: 'force.read',
  tag,
  summary:
    'Every measured terminal against its minimum, those in most need first; the last 52 weeks unless told otherwise',
  query: Choice.extend({ kind: ForceKind.optional() }),
  response: z.object({ period: Period, groups: z.array(ForceGroup) }),
});

export const RunChart = z.object({
  median: z.number(),
  above: z.int(),
  below: z.int(),
  runs: z.int(),
  longestRun: z.int(),
  pFewer: z.number().describe('chance of so few runs in a random order'),
  pMore: z.number().describe('chance of so many'),
});
export const ForceDetail = z.object({
  period: Period,
  terminal: z.object({ id: Id, code: z.string(), name: z.string() }),
  kind: ForceKind,
  whole: ForceJudgement.nullable().describe('null without a sample'),
  tools: z
    .array(ForceJudgement.extend({ toolId: Id.nullable(), toolCode: z.string().nullable(), plantCode: z.string() }))
    .describe('each tool of each plant by itself, the weakest first'),
  runs: RunChart.nullable().describe('runs about the median of all values in order of time'),
  samples: z
    .array(ForceSample.pick({ id: true, day: true, plantCode: true, toolCode: true, reference: true, newtons: true }))
    .describe('oldest first; the newest 300'),
  leftOut: z.int().describe('older samples that are judged but not listed'),
});
export type ForceDetail = z.infer<typeof ForceDetail>;

export const forceDetail = endpoint({
  method: 'GET',
  path: '/api/v1/analyses/force/:id',
  access: 'force.read',
  tag,
  summary: 'Forces of one terminal: bound, capability, normality, run chart, by tool',
  params: IdParams,
  query: Choice.extend({ kind: ForceKind }),
  response: ForceDetail,
});
