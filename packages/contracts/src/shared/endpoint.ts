import type { z } from 'zod';
import type { Access } from '../permissions.ts';

export type Method = 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';

/**
 * One HTTP operation, stated once: the API binds a handler to it, the web calls it, OpenAPI is made from it.
 * `write` says what a write honours: `create` takes an Idempotency-Key, `update` requires If-Match with the row's version.
 */
export interface Endpoint<
  Params extends z.ZodType | undefined = z.ZodType | undefined,
  Query extends z.ZodType | undefined = z.ZodType | undefined,
  Body extends z.ZodType | undefined = z.ZodType | undefined,
  Response extends z.ZodType | undefined = z.ZodType | undefined,
> {
  readonly method: Method;
  readonly path: `/api/v1/${string}`;
  readonly access: Access;
  readonly summary: string;
  readonly tag: string;
  readonly params?: Params;
  readonly query?: Query;
  readonly body?: Body;
  readonly response?: Response;
  readonly status?: 200 | 201 | 202 | 204;
  readonly write?: 'create' | 'update';
  /** Set where the answer or the request is not JSON: a file, a stream of events. */
  readonly media?: { request?: string; response?: string };
}

export const endpoint = <
  Params extends z.ZodType | undefined = undefined,
  Query extends z.ZodType | undefined = undefined,
  Body extends z.ZodType | undefined = undefined,
  Response extends z.ZodType | undefined = undefined,
>(
  definition: Endpoint<Params, Query, Body, Response>,
): Endpoint<Params, Query, Body, Response> => definition;

/** What a caller sends. */
export type Input<Schema> = Schema extends z.ZodType ? z.input<Schema> : undefined;
/** What a handler receives, or a caller gets back. */
export type Output<Schema> = Schema extends z.ZodType ? z.output<Schema> : undefined;
