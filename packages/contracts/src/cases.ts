/** 8D cases: D0 to D8 with sign-off, and the document for the customer. */
import { z } from 'zod';
import { AuditEntry } from './audit.ts';
import { caseParts, Discipline, Need, type PartName, partNames, SignRole } from './case-parts.ts';
import { Photo } from './failures.ts';
import { endpoint } from './shared/endpoint.ts';
import { PageQuery, page } from './shared/paging.ts';
import { Day, Id, IdParams, Instant, Locale, many, Note, Paper, Version } from './shared/scalars.ts';
import { Cause, Stage } from './taxonomy.ts';

const tag = 'cases';
const optional = <Item extends z.ZodType>(item: Item) => item.nullable().default(null);
const CaseState = z.enum(['open', 'closed', 'dropped']);
const Reason = z.string().trim().min(3).max(1000);
const Title = z.string().trim().min(3).max(200);

const Header = z.object({
  title: Title,
  safety: z.boolean().default(false).describe('stays set where a linked report or complaint is safety-relevant'),
  customerId: optional(Id),
  housingId: optional(Id),
  terminalId: optional(Id),
  complaintIds: z.array(Id).max(50).default([]),
  reportIds: z.array(Id).max(200).default([]),
});
export type CaseHeader = z.output<typeof Header>;
export const NewCase = Header.extend({ plantId: Id });
export type NewCase = z.output<typeof NewCase>;

export const Signature = z.object({
  id: Id,
  discipline: Discipline,
  role: SignRole,
  signer: z.string(),
  signedAt: Instant,
  voidedAt: Instant.nullable(),
  voidedBy: z.string().nullable(),
  voidReason: z.string().nullable(),
});
export type Signature = z.infer<typeof Signature>;
export const DisciplineState = z.object({
  discipline: Discipline,
  version: z.int().min(0).describe('grows with every change of its parts; signed with this in If-Match'),
  missing: z.array(Need).describe('what it lacks before it can be signed'),
  signedAs: z.array(SignRole),
  toSignAs: z.array(SignRole).describe('roles whose signature is still to come'),
  locked: z.boolean().describe('has a signature: it is reopened, with a reason, before anything in it changes'),
});
export type DisciplineState = z.infer<typeof DisciplineState>;
export const Attachment = z.object({
  id: Id,
  discipline: Discipline,
  name: z.string(),
  mediaType: z.string(),
  bytes: z.int(),
  width: z.int().nullable(),
  height: z.int().nullable(),
  caption: z.string().nullable(),
  addedAt: Instant,
  addedBy: z.string(),
});
export type Attachment = z.infer<typeof Attachment>;
export const CaseComment = z.object({
  id: Id,
  discipline: Discipline,
  text: z.string(),
  author: z.string(),
  at: Instant,
});
export const KeptDocument = z.object({
  id: Id,
  revision: z.int(),
  format: z.enum(['pdf', 'docx']),
  locale: Locale,
  paper: Paper,
  sha256: z.string(),
  bytes: z.int(),
  recipient: z.string(),
  note: z.string().nullable(),
  keptAt: Instant,
  keptBy: z.string(),
});
export type KeptDocument = z.infer<typeof KeptDocument>;
export const CaseReport = z.object({
  id: Id,
  number: z.string(),
  foundOn: Day,
  found: Stage,
  quantityFound: z.int(),
  housingCode: z.string().nullable(),
  terminalCode: z.string().nullable(),
  safety: z.boolean(),
  photos: z.array(Photo),
});
export type CaseReport = z.infer<typeof CaseReport>;
export const LinkedComplaint = z.object({ id: Id, number: z.string(), title: z.string(), safety: z.boolean() });
export const AskedPlant = z.object({
  plantCode: z.string(),
  askedAt: Instant,
  answer: z.enum(['applies', 'does_not_apply']).nullable(),
  answerText: z.string().nullable(),
  answeredAt: Instant.nullable(),
  answeredBy: z.string().nullable(),
});

const part = <Content extends z.ZodType>(content: Content) =>
  z.object({
    content,
    version: z.int().min(0).describe('0: never saved'),
    changedAt: Instant.nullable(),
    changedBy: z.string().nullable(),
  });
type ContentSchema<Name extends PartName> = Extract<(typeof caseParts)[Name]['content'], z.ZodType>;
type PartShape = { [Name in PartName]: ReturnType<typeof part<ContentSchema<Name>>> };
const partShape = Object.fromEntries(partNames.map((name) => [name, part(caseParts[name].content)])) as PartShape;

const Row = z.object({
  id: Id,
  plantId: Id,
  plantCode: z.string(),
  number: z.string(),
  title: z.string(),
  state: CaseState,
  safety: z.boolean(),
  customerId: Id.nullable(),
  customerCode: z.string().nullable(),
  housingId: Id.nullable(),
  housingCode: z.string().nullable(),
  terminalId: Id.nullable(),
  terminalCode: z.string().nullable(),
  cause: Cause.nullable(),
  openedAt: Instant,
  openedBy: z.string(),
  closedAt: Instant.nullable(),
});
export const CaseRow = Row.extend({
  signed: z.array(Discipline).describe('disciplines with all their signatures'),
  reports: z.int(),
  complaints: z.int(),
});
export type CaseRow = z.infer<typeof CaseRow>;
export const Case = Row.extend({
  dropReason: z.string().nullable(),
  complaints: z.array(LinkedComplaint),
  reports: z.array(CaseReport),
  parts: z.object(partShape),
  disciplines: z.array(DisciplineState),
  signatures: z.array(Signature),
  comments: z.array(CaseComment),
  attachments: z.array(Attachment),
  documents: z.array(KeptDocument).describe('newest first'),
  readAcross: z.array(AskedPlant),
  version: Version,
});
export type Case = z.infer<typeof Case>;

export const listCases = endpoint({
  method: 'GET',
  path: '/api/v1/cases',
  access: 'cases.read',
  tag,
  summary: 'List 8D cases, newest first',
  query: PageQuery.extend({
    plant: many(Id).optional(),
    state: many(CaseState).optional(),
    failure: Id.optional().describe('cases that this report belongs to'),
    complaint: Id.optional().describe('cases that this complaint belongs to'),
    q: z.string().trim().max(100).optional(),
  }),
  response: page(CaseRow),
});
export const openCase = endpoint({
  method: 'POST',
  path: '/api/v1/cases',
  access: 'cases.write',
  tag,
  write: 'create',
  status: 201,
  summary: 'Open a case',
  body: NewCase,
  response: Case,
});
export const readCase = endpoint({
  method: 'GET',
  path: '/api/v1/cases/:id',
  access: 'cases.read',
  tag,
  summary: 'Read a case with everything in it',
  params: IdParams,
  response: Case,
});
export const updateCase = endpoint({
  method: 'PUT',
  path: '/api/v1/cases/:id',
  access: 'cases.write',
  tag,
  write: 'update',
  summary: 'Change the head of a case: title, customer, part, linked reports and complaints',
  params: IdParams,
  body: Header,
  response: Case,
});
export const dropCase = endpoint({
  method: 'PUT',
  path: '/api/v1/cases/:id/dropped',
  access: 'cases.sign',
  tag,
  write: 'update',
  summary: 'End a case that should not have been opened; it stays readable',
  params: IdParams,
  body: z.object({ reason: Reason }),
  response: Case,
});

const savePart = <Name extends PartName>(name: Name) =>
  endpoint({
    method: 'PUT',
    path: `/api/v1/cases/:id/parts/${name}`,
    access: 'cases.write',
    tag,
    write: 'update',
    summary: `Save the part “${name.replace('_', ' ')}”; If-Match holds the version of this part`,
    params: IdParams,
    body: caseParts[name].content,
    response: Case,
  });
type SavePart = { [Name in PartName]: ReturnType<typeof savePart<Name>> };
/** One operation a part. */
export const savePartOf = Object.fromEntries(partNames.map((name) => [name, savePart(name)])) as SavePart;

const DisciplineParams = IdParams.extend({
  discipline: z.enum(['0', '1', '2', '3', '4', '5', '6', '7', '8']).transform((it) => Number(it) as Discipline),
});
export const signDiscipline = endpoint({
  method: 'PUT',
  path: '/api/v1/cases/:id/disciplines/:discipline/signature',
  access: 'cases.sign',
  tag,
  write: 'update',
  summary: 'Sign a discipline; If-Match holds its version, so that nothing unread is signed',
  params: DisciplineParams,
  body: z.object({ role: SignRole.exclude(['product_safety']).default('quality') }),
  response: Case,
});
export const signForProductSafety = endpoint({
  method: 'PUT',
  path: '/api/v1/cases/:id/product-safety-signature',
  access: 'cases.write',
  tag,
  write: 'update',
  summary:
    'Sign the closure of a safety-relevant case as the person who answers for product safety at the plant; If-Match holds the version of D8',
  params: IdParams,
  response: Case,
});
export const reopenDiscipline = endpoint({
  method: 'PUT',
  path: '/api/v1/cases/:id/disciplines/:discipline/reopening',
  access: 'cases.sign',
  tag,
  write: 'update',
  summary: 'Reopen a signed discipline with a reason; its signatures and those of later disciplines no longer hold',
  params: DisciplineParams,
  body: z.object({ reason: Reason }),
  response: Case,
});
export const addComment = endpoint({
  method: 'POST',
  path: '/api/v1/cases/:id/comments',
  access: 'cases.write',
  tag,
  write: 'create',
  status: 201,
  summary: 'Comment on a discipline',
  params: IdParams,
  body: z.object({ discipline: Discipline, text: Note.min(1) }),
  response: CaseComment,
});
export const caseHistory = endpoint({
  method: 'GET',
  path: '/api/v1/cases/:id/history',
  access: 'cases.read',
  tag,
  summary: 'Who changed what in this case, newest first',
  params: IdParams,
  query: PageQuery,
  response: page(AuditEntry),
});

export const addAttachment = endpoint({
  method: 'POST',
  path: '/api/v1/cases/:id/attachments',
  access: 'cases.write',
  tag,
  write: 'create',
  status: 201,
  summary:
    'Add a file of at most 15 MB as form field `file`, before it the fields `discipline` and `caption`; JPEG, PNG, WebP, PDF, XLSX, DOCX, PPTX, CSV or plain text, told by its content',
  params: IdParams,
  response: Attachment,
  media: { request: 'multipart/form-data' },
});
export const readAttachment = endpoint({
  method: 'GET',
  path: '/api/v1/case-attachments/:id',
  access: 'cases.read',
  tag,
  summary: 'The file; `size=small` for the thumbnail of a picture',
  params: IdParams,
  query: z.object({ size: z.enum(['full', 'small']).default('full') }),
  media: { response: 'application/octet-stream' },
});
export const removeAttachment = endpoint({
  method: 'DELETE',
  path: '/api/v1/case-attachments/:id',
  access: 'cases.write',
  tag,
  summary: 'Take an attachment away, where nothing points to it',
  params: IdParams,
  status: 204,
});

const Format = z.enum(['pdf', 'docx']);
export const previewDocument = endpoint({
  method: 'GET',
  path: '/api/v1/cases/:id/document',
  access: 'cases.read',
  tag,
  summary: 'The customer’s document as it would go out now',
  params: IdParams,
  query: z.object({ format: Format.default('pdf') }),
  media: { response: 'application/pdf, application/vnd.openxmlformats-officedocument.wordprocessingml.document' },
});
export const checkDocument = endpoint({
  method: 'GET',
  path: '/api/v1/cases/:id/document/check',
  access: 'cases.read',
  tag,
  summary: 'Which words are taken out of the document: names of other customers and amounts of money',
  params: IdParams,
  response: z.object({
    locale: Locale,
    paper: Paper,
    customer: z.string().nullable(),
    masked: z.array(z.object({ words: z.string(), kind: z.enum(['customer', 'money']), times: z.int() })),
    unreadable: z.array(z.string()).describe('scripts in the text for which there is no letter in the fonts'),
  }),
});
export const keepDocument = endpoint({
  method: 'POST',
  path: '/api/v1/cases/:id/documents',
  access: 'cases.write',
  tag,
  write: 'create',
  status: 201,
  summary: 'Keep the document as it goes out: the very file, to whom, when',
  params: IdParams,
  body: z.object({ format: Format, recipient: z.string().trim().min(1).max(200), note: optional(Note) }),
  response: KeptDocument,
});
export const readKeptDocument = endpoint({
  method: 'GET',
  path: '/api/v1/case-documents/:id',
  access: 'cases.read',
  tag,
  summary: 'The file that was kept, byte for byte',
  params: IdParams,
  media: { response: 'application/pdf, application/vnd.openxmlformats-officedocument.wordprocessingml.document' },
});
