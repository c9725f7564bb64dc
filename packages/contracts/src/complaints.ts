/** The complaint desk: what a customer complains about, the reply clocks, consents and similar past cases. */
import { z } from 'zod';
import { Clock, ClockState, Consent, LinkedReport, Reply } from './complaint-parts.ts';
import { Photo } from './failures.ts';
import { endpoint } from './shared/endpoint.ts';
import { PageQuery, page } from './shared/paging.ts';
import { Day, Id, IdParams, Instant, Mark, many, Note, Version } from './shared/scalars.ts';
import { Effect, sources } from './taxonomy.ts';

const tag = 'complaints';
const optional = <Item extends z.ZodType>(item: Item) => item.nullable().default(null);
const marks = z.array(Mark).max(200).default([]);
const Reason = z.string().trim().min(3).max(1000);

const ComplaintFields = z.object({
  plantId: Id,
  customerId: Id,
  customerRef: optional(Mark).describe('the customer’s own number'),
  customerPart: optional(Mark).describe('the customer’s part number'),
  title: z.string().trim().min(3).max(200).describe('what is wrong, in one line'),
  housingId: optional(Id),
  terminalId: optional(Id),
  quantity: optional(z.int().min(1).max(2_000_000_000)).describe('parts complained about'),
  lots: marks.describe('reel or housing lots, as printed'),
  serials: marks,
  receivedAt: Instant.describe('when the customer’s word arrived: the clocks start'),
  builtOn: optional(Day),
  foundOn: optional(Day),
  effect: optional(Effect),
  mailText: optional(z.string().trim().max(50_000)).describe('the customer’s mail, pasted in'),
  ownerId: optional(Id).describe('who answers for it; null: whoever records it'),
});
const dated = <Schema extends z.ZodType<z.infer<typeof ComplaintFields>, unknown>>(schema: Schema) =>
  schema.refine((it) => it.builtOn === null || it.foundOn === null || it.builtOn <= it.foundOn, {
    path: ['foundOn'],
    message: 'must not be before the day built',
  });
export const NewComplaint = dated(
  ComplaintFields.extend({
    safety: z.boolean().default(false).describe('set by itself where the housing is safety-relevant'),
  }),
);
export type NewComplaint = z.output<typeof NewComplaint>;
export const ComplaintInput = dated(ComplaintFields);
export type ComplaintInput = z.output<typeof ComplaintInput>;

/** What still keeps a complaint from being closed. */
export const closingBlocks = ['clock_running', 'safety_unseen', 'consent_waiting'] as const;

export const Complaint = ComplaintFields.extend({
  id: Id,
  number: z.string(),
  ownerId: Id,
  ownerName: z.string(),
  plantCode: z.string(),
  customerCode: z.string(),
  housingCode: z.string().nullable(),
  terminalCode: z.string().nullable(),
  safety: z.boolean(),
  safetyPerson: z.string().nullable().describe('who answers for product safety at the plant'),
  safetySeenAt: Instant.nullable(),
  safetySeenBy: z.string().nullable(),
  maySeeSafety: z.boolean().describe('whether you may acknowledge it as the person for product safety'),
  createdAt: Instant,
  createdBy: z.string(),
  closedAt: Instant.nullable(),
  closedBy: z.string().nullable(),
  closingNote: z.string().nullable(),
  blocks: z.array(z.enum(closingBlocks)),
  clocks: z.array(Clock),
  consents: z.array(Consent),
  reports: z.array(LinkedReport),
  photos: z.array(Photo),
  containments: z.array(z.object({ id: Id, number: z.string(), title: z.string(), closed: z.boolean() })),
  version: Version,
});
export type Complaint = z.infer<typeof Complaint>;

export const ComplaintLine = z.object({
  id: Id,
  plantId: Id,
  plantCode: z.string(),
  number: z.string(),
  customerCode: z.string(),
  customerRef: z.string().nullable(),
  title: z.string(),
  partCode: z.string().nullable(),
  quantity: z.int().nullable(),
  receivedAt: Instant,
  safety: z.boolean(),
  safetySeen: z.boolean(),
  ownerName: z.string(),
  reports: z.int(),
  closedAt: Instant.nullable(),
  next: z
    .object({ kind: Reply, state: ClockState, dueAt: Instant, ownerName: z.string(), minutesLeft: z.int() })
    .nullable()
    .describe('the clock that runs out first; a paused one where none runs'),
  paused: z.int().describe('clocks that stand still'),
  answered: z.int(),
  clocks: z.int(),
});
export type ComplaintLine = z.infer<typeof ComplaintLine>;

const DeskFilter = z.object({
  plant: many(Id).optional(),
  customer: many(Id).optional(),
  housing: many(Id).optional(),
  state: z.enum(['open', 'closed', 'all']).default('open'),
  clock: z.enum(['overdue', 'short']).optional().describe('has a clock in this state'),
  mine: z.stringbool().optional().describe('yours, or with a clock of yours'),
  safety: z.stringbool().optional(),
  failure: Id.optional().describe('made of this failure report'),
  q: z.string().trim().min(1).max(200).optional(),
});
export const listComplaints = endpoint({
  method: 'GET',
  path: '/api/v1/complaints',
  access: 'complaints.read',
  tag,
  summary: 'The desk: complaints by the clock that runs out first',
  query: PageQuery.extend(DeskFilter.shape),
  response: page(ComplaintLine).extend({
    counts: z.object({ open: z.int(), overdue: z.int(), short: z.int(), paused: z.int(), safetyUnseen: z.int() }),
  }),
});
export const readComplaint = endpoint({
  method: 'GET',
  path: '/api/v1/complaints/:id',
  access: 'complaints.read',
  tag,
  summary: 'One complaint with its clocks, reports, photos and consents',
  params: IdParams,
  response: Complaint,
});
export const createComplaint = endpoint({
  method: 'POST',
  path: '/api/v1/complaints',
  access: 'complaints.write',
  tag,
  summary: 'Record a complaint; its reply clocks start',
  write: 'create',
  status: 201,
  body: NewComplaint,
  response: Complaint,
});
export const updateComplaint = endpoint({
  method: 'PUT',
  path: '/api/v1/complaints/:id',
  access: 'complaints.write',
  tag,
  summary: 'Correct a complaint',
  write: 'update',
  params: IdParams,
  body: ComplaintInput,
  response: Complaint,
});
const act = <Body extends z.ZodType>(
  verb: 'POST' | 'PUT',
  path: `/api/v1/complaints/${string}`,
  summary: string,
  body: Body,
  write: 'create' | 'update' = 'update',
) =>
  endpoint({
    method: verb,
    path,
    access: 'complaints.write',
    tag,
    summary,
    write,
    params: IdParams,
    body,
    response: Complaint,
  });
export const flagSafety = act(
  'PUT',
  '/api/v1/complaints/:id/safety',
  'Flag a complaint as safety-relevant',
  z.object({ safety: z.literal(true) }),
);
export const acknowledgeSafety = act(
  'PUT',
  '/api/v1/complaints/:id/safety-seen',
  'Acknowledge it as the person for product safety, or as a manager',
  z.object({ seen: z.literal(true) }),
);
export const closeComplaint = act(
  'PUT',
  '/api/v1/complaints/:id/closed',
  'Close it; one that is safety-relevant waits for a second person’s consent',
  z.object({ note: Reason }),
);
export const reopenComplaint = act(
  'PUT',
  '/api/v1/complaints/:id/reopened',
  'Open it again',
  z.object({ reason: Reason }),
);
export const askUnflag = act(
  'PUT',
  '/api/v1/complaints/:id/unflag',
  'Ask a second person to take the safety flag off',
  z.object({ reason: Reason }),
);
export const answerConsent = endpoint({
  method: 'PUT',
  path: '/api/v1/complaints/:id/consents/:consentId',
  access: 'complaints.write',
  tag,
  summary: 'Give or refuse consent, as the person for product safety or another manager',
  write: 'update',
  params: IdParams.extend({ consentId: Id }),
  body: z.object({ answer: z.enum(['given', 'refused']), note: Note.nullable().default(null) }),
  response: Complaint,
});

const ClockParams = IdParams.extend({ kind: Reply });
const onClock = <Body extends z.ZodType>(step: string, summary: string, body: Body) =>
  endpoint({
    method: 'PUT',
    path: `/api/v1/complaints/:id/clocks/:kind/${step}`,
    access: 'complaints.write',
    tag,
    summary,
    write: 'update',
    params: ClockParams,
    body,
    response: Complaint,
  });
export const pauseClock = onClock('paused', 'Stop a clock, with the reason', z.object({ reason: Reason }));
export const resumeClock = onClock('resumed', 'Let a clock run on', z.object({ note: optional(Note) }));
export const answerClock = onClock(
  'answered',
  'Say that the reply went out, when, and what was sent',
  z.object({ sent: Reason, answeredAt: Instant.nullable().default(null).describe('null: now') }),
);
export const handOverClock = onClock('owner', 'Hand a clock to somebody else', z.object({ ownerId: Id }));

export const linkReport = act(
  'POST',
  '/api/v1/complaints/:id/reports',
  'Link a failure report of the plant by its number or id',
  z.object({ report: Mark }),
  'create',
);
export const recordReport = act(
  'POST',
  '/api/v1/complaints/:id/new-report',
  'Record a failure report from the intake and link it',
  z.object({ source: z.enum(['customer', 'field']), quantityFound: z.int().min(1).max(2_000_000_000), foundOn: Day }),
  'create',
);
export const unlinkReport = endpoint({
  method: 'DELETE',
  path: '/api/v1/complaints/:id/reports/:reportId',
  access: 'complaints.write',
  tag,
  summary: 'Take the link to a failure report away; the report stays',
  params: IdParams.extend({ reportId: Id }),
  response: Complaint,
});
export const addComplaintPhoto = endpoint({
  method: 'POST',
  path: '/api/v1/complaints/:id/photos',
  access: 'complaints.write',
  tag,
  summary: 'Add a photo (JPEG, PNG, WebP; at most 15 MB); it is turned upright and cleaned of metadata',
  write: 'create',
  params: IdParams,
  media: { request: 'multipart/form-data' },
  response: Photo,
  status: 201,
});
export const readComplaintPhoto = endpoint({
  method: 'GET',
  path: '/api/v1/complaint-photos/:id',
  access: 'complaints.read',
  tag,
  summary: 'A photo of a complaint as JPEG',
  params: IdParams,
  query: z.object({ size: z.enum(['full', 'small']).default('full') }),
  media: { response: 'image/jpeg' },
});
export const removeComplaintPhoto = endpoint({
  method: 'DELETE',
  path: '/api/v1/complaint-photos/:id',
  access: 'complaints.write',
  tag,
  summary: 'Take a photo of a complaint away',
  params: IdParams,
  status: 204,
});

export const likenesses = ['reference', 'lot', 'part', 'tool', 'effect', 'words'] as const;
export const SimilarCase = z.object({
  kind: z.enum(['complaint', 'report']),
  id: Id,
  number: z.string(),
  plantCode: z.string(),
  title: z.string(),
  on: Day,
  open: z.boolean().nullable().describe('null for a failure report'),
  cause: z.string().nullable(),
  source: z.enum(sources).nullable(),
  shares: z.array(z.enum(likenesses)).describe('why it is offered, strongest first'),
  duplicate: z.boolean().describe('same customer and same reference, or same customer, part and lot within 90 days'),
});
export type SimilarCase = z.infer<typeof SimilarCase>;
export const similarCases = endpoint({
  method: 'GET',
  path: '/api/v1/complaints/similar',
  access: 'complaints.read',
  tag,
  summary: 'Possible duplicates and similar past cases in your plants, with the reason why each is offered',
  query: z.object({
    plantId: Id,
    customerId: Id.optional(),
    customerRef: Mark.optional(),
    housingId: Id.optional(),
    terminalId: Id.optional(),
    lots: many(Mark).optional(),
    tools: many(Id).optional(),
    effect: Effect.optional(),
    text: z.string().trim().max(2000).optional(),
    except: Id.optional().describe('the complaint itself'),
  }),
  response: z.object({ items: z.array(SimilarCase) }),
});
