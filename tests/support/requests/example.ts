import type { Asker, TestApp } from '#tests/support/app.ts';

/** What a request to one endpoint needs beyond its path. */
export interface Request {
  params?: Record<string, string>;
  query?: string;
  body?: unknown;
  version?: number;
  /** A body that is not JSON. */
  payload?: Buffer;
  contentType?: string;
}

export interface Ground extends TestApp {
  /** Administrator of all plants, who makes what a request refers to. */
  admin: Asker;
  /** The plant where whoever asks has the role; any other is foreign. */
  own: string;
  foreign: string;
}

/**
 * Whom an endpoint serves, beside the permission in its contract.
 * `plant`: the role must hold at the plant that the request names; a foreign plant is not found.
 * `group`: the role must hold for all plants. `shared`: any plant will do. `own`: what belongs to whoever asks.
 * `maker`: what belongs to who made it, and is found by others only with the permission for all plants.
 * `hidden`: a task of the plant that is found only by who may do it there.
 */
export type Scope = 'plant' | 'group' | 'shared' | 'own' | 'maker' | 'hidden';

export interface Example {
  scope: Scope;
  /** A request that succeeds for who is allowed; it aims at rows of the plant, made anew each time. */
  make(ground: Ground, plantId: string, asker: Asker): Request | Promise<Request>;
  /** The status for who is allowed, where it is not a success. */
  status?: number;
}

export const example = (scope: Scope, make: Example['make'], status?: number): Example => ({
  scope,
  make,
  ...(status && { status }),
});
export const plain = (scope: Scope) => example(scope, () => ({}));
/** A GET that takes the plant as a filter. */
export const filtered = (more = '') => example('plant', (_, plantId) => ({ query: `plant=${plantId}${more}` }));
