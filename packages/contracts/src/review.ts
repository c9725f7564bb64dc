/** The weekly review: read, decide, close. A closed one stays as it was shown; a correction is a new edition. */
import { z } from 'zod';
import { ActionInput } from './actions.ts';
import { ReviewContent } from './review-content.ts';
import { endpoint } from './shared/endpoint.ts';
import { PageQuery, page } from './shared/paging.ts';
import { Day, Id, IdParams, Instant, Locale, many, Paper, Version } from './shared/scalars.ts';

const tag = 'reviews';

/** `live`: computed now and not kept; `open`: kept, decisions are being taken; `closed`: frozen. */
export const reviewStates = ['live', 'open', 'closed'] as const;
export const ReviewState = z.enum(reviewStates);

const Edition = z.object({
  id: Id,
  edition: z.int(),
  state: ReviewState,
  openedAt: Instant,
  reason: z.string().nullable(),
});

export const Review = z.object({
  id: Id.nullable().describe('null while live'),
  state: ReviewState,
  edition: z.int(),
  reason: z.string().nullable().describe('why the edition before was corrected'),
  openedAt: Instant.nullable(),
  openedBy: z.string().nullable().describe('null: prepared by the clock'),
  closedAt: Instant.nullable(),
  closedBy: z.string().nullable(),
  hash: z.string().nullable().describe('SHA-256 of what is kept'),
  intact: z.boolean().describe('whether what is kept still has that hash'),
  editions: z.array(Edition).describe('newest first'),
  mayWrite: z.boolean().describe('whether you may decide, renew and close'),
  isOver: z.boolean().describe('whether the week has ended in all plants; only then it can be kept'),
  content: ReviewContent,
  version: Version.nullable(),
});
export type Review = z.infer<typeof Review>;

/** Which plants, which week. No plant: all of yours, which is the group where you may read all. */
export const ReviewQuery = z.object({
  plant: many(Id).optional(),
  start: Day.optional().describe('any day of the week wanted; default: the last full week'),
});
export type ReviewQuery = z.output<typeof ReviewQuery>;

export const readWeekReview = endpoint({
  method: 'GET',
  path: '/api/v1/reviews/week',
  access: 'reviews.read',
  tag,
  summary: 'The review of a week: its newest edition as it is kept, or computed now where none is kept',
  query: ReviewQuery.extend({ live: z.stringbool().default(false).describe('compute now even where one is kept') }),
  response: Review,
});
export const readReview = endpoint({
  method: 'GET',
  path: '/api/v1/reviews/:id',
  access: 'reviews.read',
  tag,
  summary: 'One edition of a review, as it is kept',
  params: IdParams,
  response: Review,
});

export const ReviewLine = z.object({
  id: Id,
  group: z.boolean(),
  plantCodes: z.array(z.string()),
  weekFrom: Day,
  edition: z.int(),
  state: ReviewState,
  decisions: z.int(),
  openedAt: Instant,
  closedAt: Instant.nullable(),
  closedBy: z.string().nullable(),
});
export type ReviewLine = z.infer<typeof ReviewLine>;
export const listReviews = endpoint({
  method: 'GET',
  path: '/api/v1/reviews',
  access: 'reviews.read',
  tag,
  summary: 'Reviews that are kept, newest week first',
  query: PageQuery.extend({ plant: many(Id).optional().describe('of any of these plants') }),
  response: page(ReviewLine),
});

export const openReview = endpoint({
  method: 'POST',
  path: '/api/v1/reviews',
  access: 'reviews.write',
  tag,
  summary: 'Keep the review of a week, with its figures of now',
  write: 'create',
  status: 201,
  body: z.object({ plant: z.array(Id).max(200).default([]).describe('none: the group'), start: Day }),
  response: Review,
});
export const renewReview = endpoint({
  method: 'PUT',
  path: '/api/v1/reviews/:id/figures',
  access: 'reviews.write',
  tag,
  summary: 'Count the figures of an open review again',
  write: 'update',
  params: IdParams,
  response: Review,
});
export const DecisionInput = ActionInput.pick({
  plantId: true,
  kind: true,
  title: true,
  description: true,
  ownerId: true,
  dueOn: true,
});
export type DecisionInput = z.output<typeof DecisionInput>;
export const decide = endpoint({
  method: 'POST',
  path: '/api/v1/reviews/:id/decisions',
  access: 'reviews.write',
  tag,
  summary: 'Write down a decision; it becomes an action',
  write: 'create',
  status: 201,
  params: IdParams,
  body: DecisionInput,
  response: Review,
});
export const closeReview = endpoint({
  method: 'PUT',
  path: '/api/v1/reviews/:id/closed',
  access: 'reviews.write',
  tag,
  summary: 'Close a review: it stays as it is shown',
  write: 'update',
  params: IdParams,
  response: Review,
});
export const correctReview = endpoint({
  method: 'POST',
  path: '/api/v1/reviews/:id/editions',
  access: 'reviews.write',
  tag,
  summary: 'Begin a corrected edition of a closed review; the closed one stays',
  write: 'create',
  status: 201,
  params: IdParams,
  body: z.object({ reason: z.string().trim().min(3).max(1000) }),
  response: Review,
});

const Printing = z.object({
  locale: Locale.optional().describe('default: the language of the one plant, else yours'),
  paper: Paper.optional().describe('default: the sheet of the plants'),
});
const pdf = { response: 'application/pdf' };
export const printReview = endpoint({
  method: 'GET',
  path: '/api/v1/reviews/:id/document',
  access: 'reviews.read',
  tag,
  summary: 'An edition as PDF of two pages at most',
  params: IdParams,
  query: Printing,
  media: pdf,
});
export const printWeekReview = endpoint({
  method: 'GET',
  path: '/api/v1/reviews/week/document',
  access: 'reviews.read',
  tag,
  summary: 'The review of a week as PDF of two pages at most',
  query: readWeekReview.query!.extend(Printing.shape),
  media: pdf,
});

export const Subscriptions = z.object({
  plants: z.array(Id).max(200).describe('plants whose review you are sent'),
  group: z.boolean().describe('whether you are sent that of the group'),
});
export type Subscriptions = z.output<typeof Subscriptions>;
export const readSubscriptions = endpoint({
  method: 'GET',
  path: '/api/v1/reviews/subscriptions',
  access: 'reviews.read',
  tag,
  summary: 'Which reviews you are sent by mail on the first morning of the reporting week',
  response: Subscriptions,
});
export const changeSubscriptions = endpoint({
  method: 'PUT',
  path: '/api/v1/reviews/subscriptions',
  access: 'reviews.read',
  tag,
  summary: 'Choose which reviews you are sent by mail',
  body: Subscriptions,
  response: Subscriptions,
});
