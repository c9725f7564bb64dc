/** Whether a fix held: what would count as proof, stated when the action is opened, and what the data say since. */
import { z } from 'zod';
import { preventionKinds } from './prevention.ts';
import { Period } from './shared/change.ts';
import { Estimate, Interval, Reason } from './shared/estimate.ts';
import { Day, Id, Instant } from './shared/scalars.ts';
import { Cause, causeTaxonomy, Source } from './taxonomy.ts';

export const Prevention = z.enum(preventionKinds);
const optional = <Item extends z.ZodType>(item: Item) => item.nullable().default(null);

export const effectVerdicts = ['held', 'not_shown_yet', 'did_not_hold'] as const;
export const EffectVerdict = z.enum(effectVerdicts);
export type EffectVerdict = z.infer<typeof EffectVerdict>;

/** Which reports the fix is to prevent, within its plant. */
export const EffectScope = z.object({
  cause: optional(Cause),
  subCause: optional(z.string().max(80)),
  housingId: optional(Id),
  terminalId: optional(Id),
  toolId: optional(Id),
  lineId: optional(Id),
  customerId: optional(Id),
  sources: z.array(Source).max(4).default([]).describe('empty: every source'),
});
export type EffectScope = z.output<typeof EffectScope>;

export const EffectPlanInput = z
  .object({
    scope: EffectScope,
    before: Period.describe('days built that the rate before is counted over'),
    cleanPoint: Day.describe('first day built with the fix in place'),
    reduction: z.number().gt(0).max(1).describe('promised: 0.5 halves the rate, 1 ends the failures'),
    onRecurrence: z
      .enum(['reopen', 'tell'])
      .default('reopen')
      .describe('what a report that the fix should have prevented does'),
  })
  .refine(({ scope }) => scope.cause || scope.housingId || scope.terminalId || scope.toolId, {
    path: ['scope'],
    message: 'must name at least a cause, a housing, a terminal or a tool',
  })
  .refine(
    ({ scope }) =>
      scope.subCause === null || (scope.cause && causeTaxonomy[scope.cause].subCauses.includes(scope.subCause)),
    { path: ['scope', 'subCause'], message: 'must be a sub-cause of the cause' },
  )
  .refine(({ before }) => before.from < before.to, { path: ['before', 'to'], message: 'must lie after the first day' })
  .refine(({ before, cleanPoint }) => before.to <= cleanPoint, {
    path: ['cleanPoint'],
    message: 'must not lie in the period before',
  });
export type EffectPlanInput = z.output<typeof EffectPlanInput>;

export const Counts = z.object({
  failures: z.int(),
  exposure: z
    .number()
    .nullable()
    .describe('terminals inserted, weighed by how much of their failures is reported by now'),
});

/** What would count as proof, as it was stated when the plan was made. */
export const EffectProof = z.object({
  before: Counts,
  rateBefore: Estimate.describe('failures per million terminals'),
  needed: z.union([
    z.object({
      value: z.number().describe('terminals'),
      mostFailures: z.int(),
      expectedFailures: z.number(),
      power: z.number(),
      reason: z.null(),
    }),
    z.object({ value: z.null(), reason: Reason }),
  ]),
  perDay: z.number().describe('terminals a day over the last four weeks'),
  supplyOn: Day.nullable().describe('day on which production will have supplied it; null: not within twenty years'),
  wider: z.boolean().describe('production is not reported by all that the scope names; it is counted without that'),
  maturity: z
    .array(z.number())
    .nullable()
    .describe('share of the failures of a build that is reported after 0, 1, 2 … months; null: reported at once'),
  statedOn: Day,
});
export type EffectProof = z.infer<typeof EffectProof>;

export const EffectLook = z.object({
  day: Day,
  failures: z.int(),
  exposure: z.number().nullable(),
  verdict: EffectVerdict,
  ratio: z.number().nullable(),
  interval: Interval.nullable().describe('of the ratio after ÷ before, over all looks'),
});
export type EffectLook = z.infer<typeof EffectLook>;

export const Effect = z.object({
  plan: EffectPlanInput,
  planned: EffectProof,
  plannedAt: Instant,
  frozen: z.boolean().describe('carried out: the plan stays as it is'),
  verdict: EffectVerdict,
  shownOn: Day.nullable().describe('first look that showed a lower rate'),
  excludedOn: Day.nullable().describe('first look that excluded the promise'),
  fewerThanPlanned: z.boolean(),
  reason: Reason.nullable().describe('why nothing can be said yet'),
  before: Counts.extend({ rate: Estimate }),
  after: Counts.extend({ rate: Estimate }),
  ratio: z.object({
    value: z.number().nullable(),
    interval: Interval.nullable().describe('exact, for one look'),
    p: z.number().nullable().describe('one-sided exact conditional test of a lower rate, for one look'),
    overAllLooks: Interval.nullable().describe('always valid: may be looked at as often as one likes'),
  }),
  evidence: z.object({ ofReduction: z.number(), againstPromise: z.number(), needed: z.number() }).nullable(),
  endedAtFailure: z
    .boolean()
    .describe('whether the period before ended with a failure, as the proof of the bound asks'),
  looks: z.array(EffectLook).describe('recomputed by week from today’s data'),
  kept: z.array(EffectLook).describe('what was said at the time, newest first'),
  weeks: z.array(z.object({ from: Day, to: Day, failures: z.int(), exposure: z.number().nullable(), rate: Estimate })),
  recurrences: z.array(
    z.object({
      failureId: Id,
      number: z.string(),
      builtOn: Day.nullable(),
      foundOn: Day,
      certain: z.boolean(),
      reopened: z.boolean().describe('it opened the action again'),
    }),
  ),
});
export type Effect = z.infer<typeof Effect>;

/** An effect judged here, for the what-if and the weekly review. */
export const JudgedEffect = z.object({
  actionId: Id,
  number: z.string(),
  title: z.string(),
  plantId: Id,
  cause: Cause.nullable(),
  prevention: Prevention.nullable(),
  verdict: EffectVerdict,
  reduction: z.object({ low: z.number(), likely: z.number(), high: z.number() }).describe('1 − ratio, within 0 to 1'),
  fewerThanPlanned: z.boolean(),
});
export type JudgedEffect = z.infer<typeof JudgedEffect>;
