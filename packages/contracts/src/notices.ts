/** What a person is told: inside the product, by mail if they like, and their due dates as a calendar feed. */
import { z } from 'zod';
import { noticeKinds } from './notice-kinds.ts';
import { endpoint } from './shared/endpoint.ts';
import { PageQuery, page } from './shared/paging.ts';
import { Id, IdParams, Instant } from './shared/scalars.ts';

const tag = 'notices';
export const Facts = z.record(z.string(), z.union([z.string(), z.number()]));
export type Facts = z.infer<typeof Facts>;

export const Notice = z.object({
  id: Id,
  kind: z.enum(noticeKinds),
  facts: Facts.describe('what the words of the kind leave open'),
  link: z.string().describe('page of the dashboard'),
  plantId: Id.nullable(),
  plantCode: z.string().nullable(),
  at: Instant,
  readAt: Instant.nullable(),
});
export type Notice = z.infer<typeof Notice>;

export const listNotices = endpoint({
  method: 'GET',
  path: '/api/v1/notices',
  access: 'signed-in',
  tag,
  summary: 'The own notices, newest first',
  query: PageQuery.extend({ unread: z.stringbool().default(false) }),
  response: page(Notice),
});
export const countNotices = endpoint({
  method: 'GET',
  path: '/api/v1/notices/count',
  access: 'signed-in',
  tag,
  summary: 'How many of the own notices are unread',
  response: z.object({ unread: z.int() }),
});
export const readNotice = endpoint({
  method: 'PUT',
  path: '/api/v1/notices/:id/read',
  access: 'signed-in',
  tag,
  summary: 'Mark one of the own notices as read',
  params: IdParams,
  status: 204,
});
export const readAllNotices = endpoint({
  method: 'PUT',
  path: '/api/v1/notices/read',
  access: 'signed-in',
  tag,
  summary: 'Mark all of the own notices as read',
  status: 204,
});

export const NoticePreferences = z.object({
  mail: z.boolean().describe('send each notice by e-mail too'),
});
export const noticePreferences = endpoint({
  method: 'GET',
  path: '/api/v1/notices/preferences',
  access: 'signed-in',
  tag,
  summary: 'Whether notices are mailed, and whether mail is set up at all',
  response: NoticePreferences.extend({
    mailSetUp: z.boolean().describe('whether the service has a mail server to send by'),
    feedSince: Instant.nullable().describe('since when there is a calendar address'),
  }),
});
export const changeNoticePreferences = endpoint({
  method: 'PUT',
  path: '/api/v1/notices/preferences',
  access: 'signed-in',
  tag,
  summary: 'Choose whether notices are mailed',
  body: NoticePreferences,
  status: 204,
});

export const renewFeed = endpoint({
  method: 'PUT',
  path: '/api/v1/calendar-feed',
  access: 'signed-in',
  tag,
  summary: 'Make a new secret calendar address; the one before stops working',
  response: z.object({ url: z.string().describe('shown once; whoever knows it can read the due dates') }),
});
export const closeFeed = endpoint({
  method: 'DELETE',
  path: '/api/v1/calendar-feed',
  access: 'signed-in',
  tag,
  summary: 'Close the calendar address',
  status: 204,
});
export const readFeed = endpoint({
  method: 'GET',
  path: '/api/v1/calendar-feed/:file',
  access: 'public',
  tag,
  summary: 'The open actions of one person by due date (iCalendar, RFC 5545)',
  params: z.object({ file: z.string().regex(/^[\w-]{20,100}\.ics$/, 'must end in .ics') }),
  media: { response: 'text/calendar' },
});

export const MailSummary = z.object({
  waiting: z.int(),
  givenUp: z.int(),
  oldestWaiting: Instant.nullable(),
  lastError: z.string().nullable(),
});
export const mailSummary = endpoint({
  method: 'GET',
  path: '/api/v1/mail',
  access: 'people.read',
  tag,
  summary: 'Whether mail gets out: how much waits, how much was given up, and the last error',
  response: MailSummary.extend({ mailSetUp: z.boolean() }),
});
export const retryMail = endpoint({
  method: 'PUT',
  path: '/api/v1/mail/retry',
  access: 'people.write',
  tag,
  summary: 'Try again what waits or was given up',
  response: z.object({ retried: z.int() }),
});
