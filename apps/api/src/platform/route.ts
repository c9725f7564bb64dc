import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Permission } from '#contracts/permissions.ts';
import type { Endpoint, Output } from '#contracts/shared/endpoint.ts';
import { type Actor, plantsWith } from './actor.ts';
import { problem } from './problems.ts';
import { runUnit, type Unit } from './unit.ts';

type Schema = Endpoint['params'];

export interface Call<Params, Query, Body> {
  params: Params;
  query: Query;
  body: Body;
  /** Whoever asks; on a public route, nobody. */
  actor: Actor;
  /** The version named by If-Match; only on endpoints that update. */
  version: number;
  at: Date;
  /** Runs the work in one transaction, honouring the Idempotency-Key. */
  write<Result>(work: (unit: Unit) => Promise<Result>): Promise<Result>;
  request: FastifyRequest;
  reply: FastifyReply;
}

const nobody: Actor = {
  id: '00000000-0000-0000-0000-000000000000',
  kind: 'person',
  name: 'nobody',
  locale: 'en',
  mustChangePassword: false,
  grants: [],
};

function authorise(endpoint: Endpoint, request: FastifyRequest): Actor {
  if (endpoint.access === 'public') return request.actor ?? nobody;
  const { actor } = request;
  if (!actor) throw problem('sign_in_required', 'Sign in, or send a valid token as `Authorization: Bearer …`.');
  if (actor.mustChangePassword && !endpoint.path.startsWith('/api/v1/session'))
    throw problem('password_change_required', 'Change the first password you were given under “My account”.');
  if (endpoint.access !== 'signed-in' && plantsWith(actor, endpoint.access as Permission).length === 0)
    throw problem('not_allowed', 'Ask an administrator for a role that may do this.');
  return actor;
}

function versionOf(endpoint: Endpoint, request: FastifyRequest): number {
  if (endpoint.write !== 'update') return 0;
  const match = /^"?(\d{1,9})"?$/.exec(request.headers['if-match'] ?? '');
  if (!match)
    throw problem(
      'version_required',
      'Send the version you read as `If-Match: "<version>"`, so that no change of somebody else is overwritten.',
    );
  return Number(match[1]);
}

function idempotencyOf(endpoint: Endpoint, request: FastifyRequest): { key: string; request: unknown } | undefined {
  const key = request.headers['idempotency-key'];
  if (endpoint.write !== 'create' || typeof key !== 'string') return undefined;
  if (!/^[\x21-\x7e]{8,100}$/.test(key))
    throw problem('invalid_request', 'An Idempotency-Key has 8 to 100 visible characters.');
  return { key, request: [endpoint.method, request.url, request.body ?? null] };
}

/** Binds a contract endpoint to its handler: schemas, permission, version, idempotency, status. */
export function bind<P extends Schema, Q extends Schema, B extends Schema, R extends Schema>(
  app: FastifyInstance,
  endpoint: Endpoint<P, Q, B, R>,
  handler: (call: Call<Output<P>, Output<Q>, Output<B>>) => Promise<R extends undefined ? unknown : Output<R>>,
): void {
  const {
    method,
    path,
    summary,
    tag,
    params,
    query,
    body,
    response,
    media,
    status = response ? 200 : media?.response ? 200 : 204,
  } = endpoint;
  app.route({
    method,
    url: path,
    config: { endpoint },
    schema: {
      summary,
      tags: [tag],
      ...(params && { params }),
      ...(query && { querystring: query }),
      ...(body && { body }),
      ...(response && { response: { [status]: response } }),
    },
    preValidation: async (request) => {
      authorise(endpoint, request);
    },
    handler: async (request, reply) => {
      const actor = authorise(endpoint, request);
      const at = app.clock();
      const result = await handler({
        params: request.params as Output<P>,
        query: request.query as Output<Q>,
        body: request.body as Output<B>,
        actor,
        version: versionOf(endpoint, request),
        at,
        write: (work) => runUnit(app.db, { actor, at, idempotency: idempotencyOf(endpoint, request) }, work),
        request,
        reply,
      });
      if (reply.sent) return reply;
      return status === 204 ? reply.code(204).send() : reply.code(status).send(result);
    },
  });
}
