/** The trail of every change: who, when, what it was, what it became. */
import { z } from 'zod';
import { endpoint } from './shared/endpoint.ts';
import { PageQuery, page } from './shared/paging.ts';
import { Id, Instant, many } from './shared/scalars.ts';

export const AuditEntry = z.object({
  id: Id,
  at: Instant,
  actor: z.string().describe('name of the person or token, or "system"'),
  action: z.string().describe('created, updated, retired, imported …'),
  entity: z.string(),
  entityId: z.string(),
  label: z.string().describe('what people call it: a report number, a code, a name'),
  plantId: Id.nullable(),
  before: z.record(z.string(), z.unknown()).nullable(),
  after: z.record(z.string(), z.unknown()).nullable(),
});
export type AuditEntry = z.infer<typeof AuditEntry>;

export const listAudit = endpoint({
  method: 'GET',
  path: '/api/v1/audit',
  access: 'audit.read',
  tag: 'audit',
  summary: 'Read the audit trail, newest first',
  query: PageQuery.extend({
    plant: many(Id).optional(),
    entity: many(z.string().max(40)).optional(),
    entityId: z.string().max(80).optional(),
    actor: z.string().max(100).optional(),
    from: Instant.optional(),
    to: Instant.optional(),
  }),
  response: page(AuditEntry),
});
