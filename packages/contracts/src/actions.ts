/** Actions: what was promised by whom until when, its evidence, and its verification by another person. */
import { z } from 'zod';
import { Effect, EffectPlanInput, EffectProof, EffectVerdict, JudgedEffect, Prevention } from './effects.ts';
import { endpoint } from './shared/endpoint.ts';
import { PageQuery, page } from './shared/paging.ts';
import { Currency, Day, Id, IdParams, Instant, MinorUnits, many, Name, Note, Version } from './shared/scalars.ts';
import { Cause } from './taxonomy.ts';

const tag = 'actions';
const optional = <Item extends z.ZodType>(item: Item) => item.nullable().default(null);

export const actionKinds = ['containment', 'corrective', 'preventive', 'read_across'] as const;
export const ActionKind = z.enum(actionKinds);
export type ActionKind = z.infer<typeof ActionKind>;

/** `verified` and `given_up` are closed; `verified` is reached by the verification of another person only. */
export const actionStates = ['agreed', 'under_way', 'held_up', 'carried_out', 'verified', 'given_up'] as const;
export const ActionState = z.enum(actionStates);
export type ActionState = z.infer<typeof ActionState>;
export const closedStates = ['verified', 'given_up'] as const satisfies readonly ActionState[];
export const isClosed = (state: ActionState): boolean => closedStates.some((closed) => closed === state);

/** Where the action comes from; several may be named. */
export const ActionOrigin = z.object({
  complaintId: optional(Id),
  containmentId: optional(Id),
  caseId: optional(Id),
  reviewId: optional(Id),
});
export type ActionOrigin = z.output<typeof ActionOrigin>;

const ActionFields = z.object({
  kind: ActionKind,
  title: Name,
  description: optional(Note),
  ownerId: Id.describe('somebody with a role at the plant'),
  dueOn: Day,
  effortHours: optional(z.number().min(0).max(100_000)),
  cost: optional(z.object({ amountMinor: MinorUnits.min(0), currency: Currency })),
  prevention: optional(Prevention).describe('the prevention it puts in place, so that what it achieved is found again'),
});

export const ActionInput = ActionFields.extend(ActionOrigin.shape).extend({
  id: Id.optional().describe('made by the sender so that a repeated send adds nothing; UUID version 7'),
  plantId: Id,
  effect: optional(EffectPlanInput).describe('what would count as proof; corrective and preventive actions'),
});
export type ActionInput = z.output<typeof ActionInput>;
export const ActionChange = ActionFields;
export type ActionChange = z.output<typeof ActionChange>;

export const ActionRow = z.object({
  id: Id,
  plantId: Id,
  plantCode: z.string(),
  number: z.string(),
  kind: ActionKind,
  title: z.string(),
  ownerId: Id,
  owner: z.string(),
  openedOn: Day,
  dueOn: Day,
  state: ActionState,
  stateReason: z.string().nullable(),
  closedOn: Day.nullable(),
  daysOpen: z.int().describe('until today in the plant, or until it was closed'),
  daysOverdue: z.int().describe('0 unless it is open, not carried out and past its day'),
  reopened: z.int().describe('times it was opened again'),
  effect: z
    .object({ verdict: EffectVerdict.nullable().describe('null before the first look'), cleanPoint: Day })
    .nullable(),
});
export type ActionRow = z.infer<typeof ActionRow>;

export const ActionEvidence = z.object({
  id: Id,
  kind: z.enum(['text', 'photo', 'file', 'report']),
  text: z.string().nullable(),
  failureId: Id.nullable(),
  failureNumber: z.string().nullable(),
  fileName: z.string().nullable(),
  bytes: z.int().nullable(),
  addedAt: Instant,
  addedBy: z.string(),
});
export type ActionEvidence = z.infer<typeof ActionEvidence>;

export const ActionStep = z.object({
  at: Instant,
  actor: z.string(),
  state: ActionState,
  reason: z.string().nullable(),
});

export const ActionOf = ActionRow.extend({
  description: z.string().nullable(),
  effortHours: z.number().nullable(),
  cost: z.object({ amountMinor: MinorUnits, currency: Currency }).nullable(),
  prevention: Prevention.nullable(),
  openedBy: z.string(),
  carriedOutOn: Day.nullable(),
  verifiedBy: z.string().nullable(),
  verifiedOn: Day.nullable(),
  verification: z.string().nullable(),
  mayVerify: z.boolean().describe('whether whoever asks may verify it: not the owner, nor who carried it out'),
  evidence: z.array(ActionEvidence),
  steps: z.array(ActionStep).describe('every change of the state, oldest first'),
  version: Version,
}).extend({
  complaintId: Id.nullable(),
  containmentId: Id.nullable(),
  caseId: Id.nullable(),
  reviewId: Id.nullable(),
});
export type ActionOf = z.infer<typeof ActionOf>;

export const ActionFilter = z.object({
  plant: many(Id).optional(),
  owner: many(z.union([Id, z.literal('me')]))
    .optional()
    .describe('`me`: whoever asks'),
  kind: many(ActionKind).optional(),
  state: many(ActionState).optional(),
  open: z.stringbool().optional().describe('not verified and not given up'),
  overdue: z.stringbool().optional(),
  toVerify: z.stringbool().optional().describe('carried out, and whoever asks may verify it'),
  verdict: many(z.union([EffectVerdict, z.literal('none')]))
    .optional()
    .describe('of its effect; none: not judged'),
  dueFrom: Day.optional(),
  dueTo: Day.optional(),
  complaint: Id.optional(),
  containment: Id.optional(),
  case: Id.optional(),
  review: Id.optional(),
  q: z.string().trim().min(1).max(200).optional().describe('in number, title and description'),
});
export type ActionFilter = z.infer<typeof ActionFilter>;

export const listActions = endpoint({
  method: 'GET',
  path: '/api/v1/actions',
  access: 'actions.read',
  tag,
  summary: 'List actions, open ones first, by due day',
  query: ActionFilter.extend(PageQuery.shape),
  response: page(ActionRow),
});
export const countActions = endpoint({
  method: 'GET',
  path: '/api/v1/actions/count',
  access: 'actions.read',
  tag,
  summary: 'How many actions the filter selects, and how old the open ones are',
  query: ActionFilter,
  response: z.object({
    all: z.int(),
    open: z.int(),
    overdue: z.int(),
    toVerify: z.int().describe('carried out, and whoever asks may verify it'),
    reopened: z.int().describe('open again'),
    ageing: z.array(z.object({ days: z.enum(['0-13', '14-27', '28-55', '56-']), actions: z.int() })),
  }),
});
export const exportActions = endpoint({
  method: 'GET',
  path: '/api/v1/actions/export',
  access: 'actions.read',
  tag,
  summary: 'Exactly the filtered list as CSV or XLSX; formulas are made harmless',
  query: ActionFilter.extend({ format: z.enum(['csv', 'xlsx']) }),
  media: { response: 'text/csv, application/vnd.openxmlformats-officedocument.spreadsheetml.sheet' },
});
export const readAction = endpoint({
  method: 'GET',
  path: '/api/v1/actions/:id',
  access: 'actions.read',
  tag,
  summary: 'An action with its evidence and every change of its state',
  params: IdParams,
  response: ActionOf,
});
export const createAction = endpoint({
  method: 'POST',
  path: '/api/v1/actions',
  access: 'actions.write',
  tag,
  summary: 'Open an action',
  write: 'create',
  status: 201,
  body: ActionInput,
  response: ActionOf,
});
export const updateAction = endpoint({
  method: 'PUT',
  path: '/api/v1/actions/:id',
  access: 'actions.write',
  tag,
  summary: 'Change an open action',
  write: 'update',
  params: IdParams,
  body: ActionChange,
  response: ActionOf,
});
export const moveAction = endpoint({
  method: 'PUT',
  path: '/api/v1/actions/:id/state',
  access: 'actions.write',
  tag,
  summary: 'Move an action on; holding up, giving up and opening again take a reason. Nothing is verified here',
  write: 'update',
  params: IdParams,
  body: z.object({
    state: z.enum(['agreed', 'under_way', 'held_up', 'carried_out', 'given_up']),
    reason: optional(Note),
  }),
  response: ActionOf,
});
export const verifyAction = endpoint({
  method: 'PUT',
  path: '/api/v1/actions/:id/verification',
  access: 'actions.write',
  tag,
  summary: 'Verify what was carried out, or send it back; never by the owner',
  write: 'update',
  params: IdParams,
  body: z.object({ passed: z.boolean(), note: Note.min(1).describe('what was looked at and what it showed') }),
  response: ActionOf,
});

export const addEvidence = endpoint({
  method: 'POST',
  path: '/api/v1/actions/:id/evidence',
  access: 'actions.write',
  tag,
  summary: 'Add evidence: words, or the link to a failure report of the plant',
  write: 'create',
  status: 201,
  params: IdParams,
  body: z
    .object({ text: optional(Note.min(1)), failureId: optional(Id) })
    .refine((it) => it.text !== null || it.failureId !== null, 'write something, or name a report'),
  response: ActionEvidence,
});
export const addEvidenceFile = endpoint({
  method: 'POST',
  path: '/api/v1/actions/:id/files',
  access: 'actions.write',
  tag,
  summary: 'Add a photo or a file (PDF, DOCX, XLSX, CSV, text; at most 15 MB), form field `file`',
  write: 'create',
  status: 201,
  params: IdParams,
  response: ActionEvidence,
  media: { request: 'multipart/form-data' },
});
export const readEvidenceFile = endpoint({
  method: 'GET',
  path: '/api/v1/action-files/:id',
  access: 'actions.read',
  tag,
  summary: 'A photo or file of an action; `size=small` for a thumbnail of a photo',
  params: IdParams,
  query: z.object({ size: z.enum(['full', 'small']).default('full') }),
  media: { response: 'application/octet-stream' },
});
export const removeEvidence = endpoint({
  method: 'DELETE',
  path: '/api/v1/action-evidence/:id',
  access: 'actions.write',
  tag,
  summary: 'Take evidence back, while the action is open',
  params: IdParams,
  status: 204,
});

export const readEffect = endpoint({
  method: 'GET',
  path: '/api/v1/actions/:id/effect',
  access: 'actions.read',
  tag,
  summary: 'Whether the action held, judged from the data as they are now; null without a plan',
  params: IdParams,
  response: z.object({ effect: Effect.nullable() }),
});
export const planEffect = endpoint({
  method: 'PUT',
  path: '/api/v1/actions/:id/effect',
  access: 'actions.write',
  tag,
  summary: 'State what would count as proof, before the action is carried out',
  write: 'update',
  params: IdParams,
  body: EffectPlanInput,
  response: z.object({ effect: Effect.nullable() }),
});
export const previewEffect = endpoint({
  method: 'POST',
  path: '/api/v1/actions/effect-preview',
  access: 'actions.read',
  tag,
  summary: 'What would count as proof, without keeping it',
  status: 200,
  body: EffectPlanInput.safeExtend({ plantId: Id }),
  response: EffectProof,
});
export const listJudgedEffects = endpoint({
  method: 'GET',
  path: '/api/v1/actions/judged-effects',
  access: 'actions.read',
  tag,
  summary: 'Reductions that were shown or excluded here, by cause and prevention',
  query: z.object({
    plant: many(Id).optional(),
    cause: many(Cause).optional(),
    prevention: many(Prevention).optional(),
  }),
  response: z.object({ items: z.array(JudgedEffect) }),
});
