import type { z } from 'zod';
import { problem } from './problems.ts';

/** Keyset cursors: the sort key of the last row shown, opaque to the client. */
export function encodeCursor(key: readonly (string | number)[]): string {
  return Buffer.from(JSON.stringify(key)).toString('base64url');
}

export function decodeCursor<Key extends z.ZodType>(cursor: string | undefined, key: Key): z.output<Key> | null {
  if (cursor === undefined) return null;
  try {
    return key.parse(JSON.parse(Buffer.from(cursor, 'base64url').toString()));
  } catch {
    throw problem('invalid_request', 'The cursor is not one of ours. Start again from the first page.', [
      { path: 'querystring/cursor', message: 'is not valid' },
    ]);
  }
}

/** Cuts a list fetched with one row more than asked for, and names the next page. */
export function toPage<Row>(
  rows: Row[],
  limit: number,
  keyOf: (row: Row) => (string | number)[],
): { items: Row[]; next: string | null } {
  const items = rows.slice(0, limit);
  const last = items.at(-1);
  return { items, next: rows.length > limit && last !== undefined ? encodeCursor(keyOf(last)) : null };
}
