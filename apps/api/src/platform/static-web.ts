import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import files from '@fastify/static';
import type { FastifyInstance } from 'fastify';
import { sendProblem } from './error-handler.ts';
import { problem } from './problems.ts';

const built = fileURLToPath(new URL('../../../web/dist/', import.meta.url));

/** The built dashboard; any address that is not the API's is one of its pages. */
export async function serveWeb(app: FastifyInstance): Promise<void> {
  const present = existsSync(`${built}index.html`);
  if (present)
    await app.register(files, { root: built, wildcard: false, immutable: true, maxAge: '365d', index: false });
  app.setNotFoundHandler((request, reply) => {
    if (
      !present ||
      request.url.startsWith('/api/') ||
      request.method !== 'GET' ||
      /\.\w+$/.test(request.url.split('?')[0] ?? '')
    )
      return sendProblem(
        reply,
        problem('not_found', `There is nothing at ${request.method} ${request.url.split('?')[0]}. See /api/docs.`),
      );
    return reply.header('Cache-Control', 'no-cache').sendFile('index.html', { immutable: false, maxAge: 0 });
  });
}
