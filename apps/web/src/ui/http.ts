/** The web's only way to the API: one function over endpoint descriptors. */

import type { z } from 'zod';
import type { Endpoint, Input, Output } from '#contracts/shared/endpoint.ts';
import { Problem } from '#contracts/shared/problem.ts';

type Schema = z.ZodType | undefined;
type Part<Key extends string, S extends Schema> = S extends z.ZodType
  ? { [K in Key]: Input<S> }
  : { [K in Key]?: undefined };

export type CallOptions<P extends Schema, Q extends Schema, B extends Schema> = Part<'params', P> &
  (Q extends z.ZodType ? { query?: Input<Q> } : { query?: undefined }) &
  Part<'body', B> & {
    /** Sent as `Idempotency-Key`; repeat it when the same create is tried again. */
    idempotencyKey?: string;
    /** Version of the row being changed; sent as `If-Match`. */
    version?: number;
    signal?: AbortSignal;
  };

/** The API refused, with its RFC 9457 document; or it could not be reached (`code: 'unreachable'`). */
export class ProblemError extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.detail);
    this.name = 'ProblemError';
    this.problem = problem;
  }
}

const filled = (path: string, params: Record<string, unknown>): string =>
  path.replace(/:(\w+)/g, (_, name: string) => encodeURIComponent(String(params[name])));

/** Arrays repeat their key; undefined, null and '' are left out. */
export const queryString = (query: Record<string, unknown>): string => {
  const search = new URLSearchParams();
  for (const [key, value] of Object.entries(query)) {
    for (const item of Array.isArray(value) ? value : [value]) {
      if (item !== undefined && item !== null && item !== '') search.append(key, String(item));
    }
  }
  const text = search.toString();
  return text === '' ? '' : `?${text}`;
};

/** The address of a GET endpoint, for links that download a file. */
export const addressOf = (target: Endpoint, parts: { params?: object; query?: object } = {}): string =>
  filled(target.path, { ...parts.params }) + queryString({ ...parts.query });

const unreachable = (cause: unknown): ProblemError =>
  new ProblemError({
    type: 'about:blank',
    title: 'The server cannot be reached',
    status: 0,
    detail: cause instanceof Error ? cause.message : 'The server cannot be reached.',
    code: 'unreachable',
  });

export const problemFrom = async (response: Response): Promise<ProblemError> => {
  const parsed = Problem.safeParse(await response.json().catch(() => undefined));
  return new ProblemError(
    parsed.data ?? {
      type: 'about:blank',
      title: response.statusText,
      status: response.status,
      detail: `The server answered ${response.status}.`,
      code: 'unexpected_answer',
    },
  );
};

/**
 * Calls an endpoint and returns its answer, read by the endpoint's own schema.
 * @throws {ProblemError} when the API refuses, cannot be reached, or answers outside its contract.
 */
export const call = async <P extends Schema, Q extends Schema, B extends Schema, R extends Schema>(
  target: Endpoint<P, Q, B, R>,
  options: CallOptions<P, Q, B>,
): Promise<Output<R>> => {
  const { params, query, body, idempotencyKey, version, signal } = options;
  const raw = body instanceof FormData || body instanceof Blob;
  const headers = new Headers({ accept: 'application/json' });
  if (body !== undefined && !raw) headers.set('content-type', 'application/json');
  if (idempotencyKey !== undefined) headers.set('idempotency-key', idempotencyKey);
  if (version !== undefined) headers.set('if-match', `"${version}"`);

  const response = await fetch(filled(target.path, { ...(params as object) }) + queryString({ ...(query as object) }), {
    method: target.method,
    headers,
    body: body === undefined ? null : raw ? (body as BodyInit) : JSON.stringify(body),
    credentials: 'same-origin',
    signal: signal ?? null,
  }).catch((cause: unknown) => {
    if (signal?.aborted) throw cause;
    throw unreachable(cause);
  });

  if (!response.ok) throw await problemFrom(response);
  if (!target.response) return undefined as Output<R>;
  return target.response.parse(await response.json()) as Output<R>;
};
