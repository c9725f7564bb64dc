import type { FastifyInstance } from 'fastify';
import { problem } from './problems.ts';

/** The path of a string that PostgreSQL cannot store (NUL, or half of a surrogate pair), or null. */
export function unstorable(value: unknown, path: string): string | null {
  if (typeof value === 'string') return value.includes('\u0000') || !value.isWellFormed() ? path : null;
  if (typeof value !== 'object' || value === null) return null;
  for (const [key, item] of Object.entries(value)) {
    const found = unstorable(key, path) ?? unstorable(item, `${path}/${key}`);
    if (found) return found;
  }
  return null;
}

export function refuseUnstorableText(app: FastifyInstance): void {
  app.addHook('preValidation', async (request) => {
    const path =
      unstorable(request.body, 'body') ??
      unstorable(request.query, 'querystring') ??
      unstorable(request.params, 'params');
    if (path)
      throw problem('invalid_request', 'The text holds a character that cannot be stored. Remove it and send again.', [
        { path, message: 'holds a NUL or broken character' },
      ]);
  });
}
