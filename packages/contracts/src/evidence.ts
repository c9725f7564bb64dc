/** From evidence to cause: findings on a report, the suggested cause with its reasons, the next best check, confirmation, and the record. */
import { z } from 'zod';
import { SubCause } from './failures.ts';
import { Answer, FindingCode, FindingUnit, findingParts } from './finding-catalogue.ts';
import { endpoint } from './shared/endpoint.ts';
import { Estimate, Interval } from './shared/estimate.ts';
import { Day, Id, IdParams, Instant, many, Note } from './shared/scalars.ts';
import { Cause, Stage } from './taxonomy.ts';

const tag = 'evidence';
const optional = <Item extends z.ZodType>(item: Item) => item.nullable().default(null);

export const Finding = z.object({
  code: FindingCode,
  part: z.enum(findingParts),
  answer: Answer,
  value: z.number().nullable(),
  limit: z.number().nullable(),
  unit: FindingUnit.nullable(),
  note: z.string().nullable(),
  source: z.enum(['person', 'import', 'computed']),
  by: z.string().nullable(),
  at: Instant.nullable(),
});
export type Finding = z.infer<typeof Finding>;

/** One answer. A measured finding may give value and limit instead; the answer then follows from them. */
export const FindingInput = z
  .object({
    code: FindingCode,
    answer: Answer.optional(),
    value: optional(z.number().min(-1e6).max(1e6)),
    limit: optional(z.number().min(-1e6).max(1e6)),
    unit: optional(FindingUnit),
    note: optional(z.string().trim().max(500)),
  })
  .refine((it) => it.answer !== undefined || (it.value !== null && it.limit !== null), {
    path: ['answer'],
    message: 'answer yes, no or could not tell, or give a value with its limit',
  });

export const CauseOpinion = z.object({ cause: Cause, probability: z.number(), interval: Interval });
export const FindingWeight = z.object({
  finding: FindingCode,
  answer: Answer,
  logRatio: z.number().describe('natural log of the likelihood ratio for the leading cause against the others'),
  byCause: z.array(z.object({ cause: Cause, logRatio: z.number() })),
});
export const NextCheck = z.object({
  finding: FindingCode,
  minutes: z.number(),
  gain: z.number().describe('expected drop of uncertainty about the cause, bits'),
  gainPerMinute: z.number(),
  couldChangeLead: z.boolean(),
});

export const Suggestion = z.object({
  causes: z.array(CauseOpinion).describe('most probable first'),
  weights: z.array(FindingWeight).describe('what each finding contributed, weightiest first'),
  nextChecks: z.array(NextCheck).describe('best information per minute first'),
  enough: z.boolean().describe('no single check left would put another cause first'),
  model: z.object({
    version: z.int().describe('grows by one with every confirmed case it learned from'),
    casesPlant: z.int(),
    casesGroup: z.int(),
    basis: z
      .enum(['prior', 'thin', 'learned'])
      .describe('`prior`: no confirmed case yet, only the engineers’ prior; `thin`: fewer than 50 in the group'),
    muted: z.boolean().describe('its record is not better than always naming the most frequent cause'),
  }),
  takenFindings: z.int(),
});
export type Suggestion = z.infer<typeof Suggestion>;

/** The decision that holds, with what the suggestion had said without this case. */
export const KeptDecision = z.object({
  cause: Cause,
  suggested: Cause,
  probability: z.number().describe('that the suggestion gave to the cause decided on'),
  by: z.string(),
  at: Instant,
  reason: z.string().nullable(),
  modelVersion: z.int(),
  findings: z.array(z.object({ code: FindingCode, answer: Answer })).describe('what it was decided from'),
});
export type KeptDecision = z.infer<typeof KeptDecision>;

export const Evidence = z.object({
  findings: z.array(Finding),
  moot: z.array(FindingCode).describe('what this housing cannot show: it has no such lance, latch or lock'),
  decision: KeptDecision.nullable(),
  suggestion: Suggestion,
  version: z.int().describe('of the report'),
});
export type Evidence = z.infer<typeof Evidence>;

export const readEvidence = endpoint({
  method: 'GET',
  path: '/api/v1/failures/:id/evidence',
  access: 'failures.read',
  tag,
  summary: 'Findings, suggested cause with reasons, next best check',
  params: IdParams,
  response: Evidence,
});
export const takeFindings = endpoint({
  method: 'PUT',
  path: '/api/v1/failures/:id/evidence',
  access: 'failures.write',
  tag,
  summary: 'Take or change findings; those not named stay as they are',
  params: IdParams,
  body: z
    .object({
      findings: z.array(FindingInput).max(60).default([]),
      remove: z.array(FindingCode).max(60).default([]),
    })
    .refine((it) => it.findings.length + it.remove.length > 0, {
      path: ['findings'],
      message: 'must name a finding to take, or one to remove',
    }),
  response: Evidence,
});

/** Outcome of a decision on the cause: accept the suggestion, or decide otherwise with a reason. */
export const Decision = z.object({
  cause: Cause,
  subCause: optional(SubCause),
  origin: optional(Stage),
  proof: optional(Note),
  reason: optional(Note),
});
export const confirmCause = endpoint({
  method: 'PUT',
  path: '/api/v1/failures/:id/confirmation',
  access: 'failures.sort',
  tag,
  write: 'update',
  summary:
    'Confirm the cause; overriding the suggestion takes a reason. The model learns from it, and keeps what it had said before',
  params: IdParams,
  body: Decision,
  response: Evidence,
});
export const confirmBatch = endpoint({
  method: 'POST',
  path: '/api/v1/evidence/batch',
  access: 'failures.sort',
  tag,
  write: 'create',
  status: 200,
  summary: 'Confirm one cause for reports that share tool, lot and findings; refused as a whole where one differs',
  body: z.object({ ids: z.array(Id).min(1).max(500), decision: Decision }),
  response: z.object({ confirmed: z.int() }),
});
/** Reports like this one that still wait for a cause: same plant, tool, lots and answers. */
export const similarUnsorted = endpoint({
  method: 'GET',
  path: '/api/v1/failures/:id/alike',
  access: 'failures.read',
  tag,
  summary: 'Unsorted reports that share tool, lot and findings',
  params: IdParams,
  response: z.object({ items: z.array(z.object({ id: Id, number: z.string(), foundOn: Day, terminals: z.int() })) }),
});

/** Second opinions: a person who does not see the first decision decides again. */
export const OpinionTask = z.object({
  id: Id,
  failureId: Id.nullable().describe('null until I have taken it: nobody can look its cause up beforehand'),
  number: z.string().nullable(),
  plantCode: z.string(),
  askedAt: Instant,
});
export const OpinionAsk = z.object({
  plant: z.array(Id).min(1).max(50),
  from: Day,
  to: Day,
  sample: z.int().min(1).max(200),
});
export const askOpinions = endpoint({
  method: 'POST',
  path: '/api/v1/evidence/opinions',
  access: 'failures.sort',
  tag,
  write: 'create',
  status: 200,
  summary: 'Ask for blind second opinions on a random sample of confirmed reports',
  body: OpinionAsk,
  response: z.object({ asked: z.int() }),
});
export const listOpinions = endpoint({
  method: 'GET',
  path: '/api/v1/evidence/opinions',
  access: 'failures.sort',
  tag,
  summary: 'Second opinions waiting for me: not those I decided first',
  response: z.object({ items: z.array(OpinionTask) }),
});
/** The report as a second person may see it: findings and photos, without cause, proof, history and suggestion. */
export const BlindReport = z.object({
  task: OpinionTask.extend({ failureId: Id, number: z.string() }),
  findings: z.array(Finding),
  note: z.string().nullable(),
  housing: z.string().nullable(),
  terminal: z.string().nullable(),
  wire: z.string().nullable(),
  found: Stage,
  cavities: z.array(z.string()),
  photos: z.array(Id),
});
export type BlindReport = z.infer<typeof BlindReport>;
export const readOpinion = endpoint({
  method: 'GET',
  path: '/api/v1/evidence/opinions/:id',
  access: 'failures.sort',
  tag,
  summary: 'The findings of a report, without its cause',
  params: IdParams,
  response: BlindReport,
});
export const takeOpinion = endpoint({
  method: 'PUT',
  path: '/api/v1/evidence/opinions/:id/taken',
  access: 'failures.sort',
  tag,
  summary:
    'Take a second opinion upon me: its report opens without its cause, which is hidden from me until I have given it',
  params: IdParams,
  status: 204,
});
export const giveOpinion = endpoint({
  method: 'PUT',
  path: '/api/v1/evidence/opinions/:id',
  access: 'failures.sort',
  tag,
  summary: 'Give a second opinion',
  params: IdParams,
  body: z.object({ cause: Cause }),
  status: 204,
});

const Share = z.object({ value: z.number(), interval: Interval });
/** How often the suggestion was right, each case judged before it was learned from. */
export const TrackRecord = z.object({
  cases: z.int(),
  accuracy: Estimate,
  baseline: Estimate.describe('always naming the most frequent cause so far'),
  advantage: Estimate.describe('accuracy − baseline on the same cases'),
  better: z.enum(['better', 'not_better', 'too_few']),
  logLoss: Estimate,
  baselineLogLoss: Estimate,
  brier: Estimate.describe('multi-class Brier score'),
  reliability: z.number().nullable().describe('reliability part of the Brier score (Murphy), summed over the causes'),
  calibration: z.array(z.object({ from: z.number(), to: z.number(), cases: z.int(), said: z.number(), came: Share })),
  calibrationError: z.number().nullable(),
  confusion: z.array(z.object({ suggested: Cause, confirmed: Cause, cases: z.int() })),
  byCause: z.array(z.object({ cause: Cause, cases: z.int(), accuracy: Estimate })),
  byPlant: z.array(
    z.object({ plantId: Id, plantCode: z.string(), cases: z.int(), accuracy: Estimate, baseline: Estimate }),
  ),
  agreement: z.object({ pairs: z.int(), kappa: Estimate, observed: Estimate }),
  blind: Estimate.describe(
    'share of blind second opinions that agree with what had been suggested; nobody was shown it',
  ),
});
export type TrackRecord = z.infer<typeof TrackRecord>;
export const RecordFilter = z.object({ plant: many(Id).optional(), from: Day.optional(), to: Day.optional() });
export type RecordFilter = z.output<typeof RecordFilter>;
export const CaseFilter = RecordFilter.extend({ suggested: Cause.optional(), confirmed: Cause.optional() });
/** The reports behind a cell of the confusion table. */
export const judgedCases = endpoint({
  method: 'GET',
  path: '/api/v1/evidence/record/cases',
  access: 'analyses.read',
  tag,
  summary: 'The newest judged cases, by what was suggested and what was confirmed',
  query: CaseFilter,
  response: z.object({
    items: z
      .array(
        z.object({
          failureId: Id,
          number: z.string(),
          plantCode: z.string(),
          suggested: Cause,
          confirmed: Cause,
          probability: z.number().describe('given to the confirmed cause beforehand'),
          at: Instant,
        }),
      )
      .describe('at most 200'),
  }),
});
export const readRecord = endpoint({
  method: 'GET',
  path: '/api/v1/evidence/record',
  access: 'analyses.read',
  tag,
  summary: 'The suggestion’s own record',
  query: RecordFilter,
  response: TrackRecord,
});
