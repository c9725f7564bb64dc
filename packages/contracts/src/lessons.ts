/** Lessons of closed cases, and the question that closing a case puts to other plants. */
import { z } from 'zod';
import { endpoint } from './shared/endpoint.ts';
import { PageQuery, page } from './shared/paging.ts';
import { Day, Id, IdParams, Instant, many, Version } from './shared/scalars.ts';
import { Cause, Effect } from './taxonomy.ts';

const tag = 'lessons';

export const Lesson = z.object({
  id: Id,
  plantCode: z.string(),
  title: z.string(),
  problem: z.string(),
  rootCause: z.string(),
  check: z.string(),
  cause: Cause,
  subCause: z.string().nullable(),
  publishedAt: Instant,
  caseId: Id.nullable().describe('only for who may read the case'),
  caseNumber: z.string().nullable(),
});
export type Lesson = z.infer<typeof Lesson>;
export const listLessons = endpoint({
  method: 'GET',
  path: '/api/v1/lessons',
  access: 'cases.read',
  tag,
  summary: 'Lessons of the whole group, newest first; `q` searches their words',
  query: PageQuery.extend({ q: z.string().trim().min(1).max(200).optional(), cause: many(Cause).optional() }),
  response: page(Lesson),
});

export const likenesses = ['housing', 'terminal', 'cause', 'effect', 'words'] as const;
export const OfferedLesson = Lesson.extend({
  like: z.array(z.enum(likenesses)).describe('what it has in common with the report being written'),
});
export const offerLessons = endpoint({
  method: 'GET',
  path: '/api/v1/lessons/offered',
  access: 'cases.read',
  tag,
  summary: 'At most three lessons that fit a report being written',
  query: z.object({
    housing: Id.optional(),
    terminal: Id.optional(),
    cause: Cause.optional(),
    effect: Effect.optional(),
    text: z.string().trim().max(2000).optional(),
  }),
  response: z.object({ items: z.array(OfferedLesson) }),
});

/** What a plant sees of a case that is not its own: these words, and nothing else. */
export const AskedReadAcross = z.object({
  id: Id,
  plantId: Id.describe('the plant that is asked'),
  plantCode: z.string(),
  fromPlantCode: z.string(),
  why: z.array(z.enum(['tool_type', 'housing', 'terminal', 'practice'])),
  title: z.string(),
  problem: z.string(),
  rootCause: z.string(),
  check: z.string(),
  askedAt: Instant,
  answer: z.enum(['applies', 'does_not_apply']).nullable(),
  answerText: z.string().nullable(),
  answeredAt: Instant.nullable(),
  answeredBy: z.string().nullable(),
  actionId: Id.nullable(),
  version: Version,
});
export type AskedReadAcross = z.infer<typeof AskedReadAcross>;
export const listReadAcross = endpoint({
  method: 'GET',
  path: '/api/v1/read-across',
  access: 'cases.read',
  tag,
  summary: 'What my plants are asked, newest first',
  query: PageQuery.extend({ plant: many(Id).optional(), open: z.stringbool().optional() }),
  response: page(AskedReadAcross),
});
export const answerReadAcross = endpoint({
  method: 'PUT',
  path: '/api/v1/read-across/:id/answer',
  access: 'cases.write',
  tag,
  write: 'update',
  summary: 'Answer: it applies, which opens an action at the plant, or it does not, with the reason',
  params: IdParams,
  body: z.discriminatedUnion('answer', [
    z.object({
      answer: z.literal('applies'),
      text: z.string().trim().min(3).max(2000).describe('what the plant will do: the action'),
      ownerId: Id.describe('who does it'),
      due: Day,
    }),
    z.object({ answer: z.literal('does_not_apply'), text: z.string().trim().min(3).max(2000).describe('why not') }),
  ]),
  response: AskedReadAcross,
});
