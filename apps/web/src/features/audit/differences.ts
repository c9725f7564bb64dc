/** What an entry of the trail changed, field by field. */
import type { AuditEntry } from '#contracts/audit.ts';

export interface Difference {
  field: string;
  before: unknown;
  after: unknown;
}

/** Bookkeeping that says nothing to a reader. */
const silent = new Set(['id', 'version', 'createdAt', 'mustChangePassword', 'lastSeenAt']);

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a ?? null) === JSON.stringify(b ?? null);
const isEmpty = (value: unknown): boolean =>
  value === null || value === undefined || value === '' || (Array.isArray(value) && value.length === 0);

/** Fields that differ, in the order of the row; of a new row those that say something. */
export function differences({ before, after }: Pick<AuditEntry, 'before' | 'after'>): Difference[] {
  const fields = [...new Set([...Object.keys(before ?? {}), ...Object.keys(after ?? {})])];
  return fields
    .filter((field) => !silent.has(field))
    .map((field) => ({ field, before: before?.[field], after: after?.[field] }))
    .filter((it) => (before === null || after === null ? !isEmpty(it.before ?? it.after) : !same(it.before, it.after)));
}
