/** What-if: what prevention would save, from this plant's own costs by cause and ranges that an engineer stands for. */
import { z } from 'zod';
import { AnalysisHead } from './analyses.ts';
import { GateMoney } from './gates.ts';
import { preventionKinds } from './prevention.ts';
import { endpoint } from './shared/endpoint.ts';
import { Estimate, Reason } from './shared/estimate.ts';
import { AnalysisFilter } from './shared/filter.ts';
import { PageQuery, page } from './shared/paging.ts';
import { Currency, Id, IdParams, Instant, MinorUnits, Name, Note, Version } from './shared/scalars.ts';
import { Cause } from './taxonomy.ts';

const Cost = MinorUnits.min(0);
const Share = z.number().min(0).max(1);
const OptionKey = z.string().regex(/^[a-z0-9_-]{1,40}$/, 'may hold small letters, digits, _ and -');

export const PreventionEffect = z
  .object({
    cause: Cause.exclude(['undetermined']),
    low: Share.describe('share of its faults prevented: least'),
    likely: Share.describe('likeliest'),
    high: Share.describe('most'),
    actionId: Id.nullable()
      .default(null)
      .describe('the action judged effective that the range was taken from; null where entered'),
  })
  .refine(({ low, likely, high }) => low <= likely && likely <= high, {
    message: 'must not fall from least to likeliest to most',
    path: ['likely'],
  });
export const PreventionOption = z.object({
  key: OptionKey,
  kind: z.enum(preventionKinds),
  name: Name.describe('as people here call it'),
  onceMinor: Cost.describe('cost at the start, in the currency of the answer'),
  yearlyMinor: Cost.describe('cost in every year'),
  effects: z.array(PreventionEffect).min(1).max(9),
  excludes: z.array(OptionKey).max(12).default([]).describe('options that cannot be had together with this one'),
});
export type PreventionOption = z.output<typeof PreventionOption>;

export const WhatIfInput = z.object({
  options: z.array(PreventionOption).min(1).max(12),
  together: z.array(OptionKey).min(1).max(12).describe('the options that are judged as one set'),
  horizonYears: z.number().min(0.5).max(15).describe('years over which they have to pay; money is not discounted'),
  budgetMinor: Cost.nullable()
    .default(null)
    .describe('limit on the costs at the start for the best set; null for none'),
  money: GateMoney.default('withEstimates').describe('booked costs only, or with estimates'),
  seed: z
    .int()
    .min(0)
    .max(2_147_483_647)
    .default(1)
    .describe('of the random draws: the same seed gives the same figures'),
});
export type WhatIfInput = z.output<typeof WhatIfInput>;

const Outcome = z.object({
  keys: z.array(OptionKey),
  onceMinor: MinorUnits,
  yearlyMinor: MinorUnits,
  savingPerYear: Estimate.describe('minor units, before the options’ own cost'),
  netPerYear: Estimate.describe('after their yearly cost'),
  paybackYears: Estimate.describe('no upper limit: it may never be earned back'),
  probabilityPays: z.number().nullable().describe('probability that they pay within the horizon'),
  reason: Reason.nullable(),
});
export type Outcome = z.infer<typeof Outcome>;

export const WhatIfResult = AnalysisHead.extend({
  at: Instant.describe('when it was computed'),
  years: z.number().describe('length of the period that the costs come from'),
  draws: z.int(),
  reports: z.int().describe('all reports of the filter'),
  costs: z
    .array(
      z.object({
        cause: Cause,
        reports: z.int(),
        bookedMinor: z.int(),
        estimateMinor: z.int(),
        sumMinor: z.number().describe('what the simulation uses'),
        sumOfSquares: z.number(),
      }),
    )
    .describe('what the faults of each cause cost in the period'),
  unsorted: z
    .object({ reports: z.int(), bookedMinor: z.int(), estimateMinor: z.int() })
    .describe('without a cause or undetermined: nothing is saved on them, so that the saving is rather too low'),
  alone: z.array(Outcome).describe('each option by itself, in the order given'),
  together: Outcome.describe('the set chosen; options act on the same faults, so it saves less than their sum'),
  best: Outcome.extend({ worthMinor: z.number().describe('expected net worth over the horizon') })
    .nullable()
    .describe(
      'the set with the highest expected worth within the budget, of all sets; null when none is worth its cost',
    ),
});
export type WhatIfResult = z.infer<typeof WhatIfResult>;

const tag = 'what-if';
export const computeWhatIf = endpoint({
  method: 'POST',
  path: '/api/v1/analyses/what-if',
  access: 'analyses.read',
  tag,
  summary: 'What prevention options would save; nothing is kept',
  query: AnalysisFilter,
  body: WhatIfInput,
  response: WhatIfResult,
  status: 200,
});

export const WhatIfSummary = z.object({
  id: Id,
  plantId: Id,
  plantCode: z.string(),
  name: Name,
  note: z.string().nullable(),
  createdBy: z.string(),
  createdAt: Instant,
  computedAt: Instant,
  currency: Currency,
  horizonYears: z.number(),
  together: Outcome,
  best: WhatIfResult.shape.best,
  retiredAt: Instant.nullable(),
  version: Version,
});
export type WhatIfSummary = z.infer<typeof WhatIfSummary>;
export const WhatIf = WhatIfSummary.extend({
  query: z.string().describe('query string of the filter, its period filled in'),
  input: WhatIfInput,
  result: WhatIfResult.describe('as computed at `computedAt`; it does not move with later reports'),
});
export type WhatIf = z.infer<typeof WhatIf>;

export const WhatIfWrite = z.object({
  name: Name,
  note: Note.nullable().default(null),
  query: z.string().max(4000).describe('query string of the filter; it names exactly one plant'),
  input: WhatIfInput,
});
export type WhatIfWrite = z.output<typeof WhatIfWrite>;

export const listWhatIfs = endpoint({
  method: 'GET',
  path: '/api/v1/what-if',
  access: 'analyses.read',
  tag,
  summary: 'Saved scenarios, newest first',
  query: PageQuery.extend({
    plant: AnalysisFilter.shape.plant,
    retired: z.stringbool().default(false).describe('put away ones instead'),
  }),
  response: page(WhatIfSummary),
});
export const readWhatIf = endpoint({
  method: 'GET',
  path: '/api/v1/what-if/:id',
  access: 'analyses.read',
  tag,
  summary: 'A saved scenario with every input and the figures as they were',
  params: IdParams,
  response: WhatIf,
});
export const createWhatIf = endpoint({
  method: 'POST',
  path: '/api/v1/what-if',
  access: 'whatIf.write',
  tag,
  summary: 'Compute a scenario and keep it with its inputs',
  write: 'create',
  body: WhatIfWrite,
  response: WhatIf,
  status: 201,
});
export const updateWhatIf = endpoint({
  method: 'PUT',
  path: '/api/v1/what-if/:id',
  access: 'whatIf.write',
  tag,
  summary: 'Change a scenario; it is computed anew from the reports of now',
  write: 'update',
  params: IdParams,
  body: WhatIfWrite,
  response: WhatIf,
});
export const retireWhatIf = endpoint({
  method: 'PUT',
  path: '/api/v1/what-if/:id/retired',
  access: 'whatIf.write',
  tag,
  summary: 'Put a scenario away, or take it back',
  write: 'update',
  params: IdParams,
  body: z.object({ retired: z.boolean() }),
  response: WhatIf,
});
