import type { FastifyInstance } from 'fastify';
import type { Endpoint } from '#contracts/shared/endpoint.ts';

export interface RouteEntry {
  method: string;
  path: string;
  /** The contract behind it; null on what is not part of the API proper. */
  endpoint: Endpoint | null;
}

/** Keeps the list of every route bound from here on; to be called before any is. */
export function listRoutes(app: FastifyInstance): void {
  const list: RouteEntry[] = [];
  app.decorate('routeList', list);
  app.addHook('onRoute', ({ method, url, config }) => {
    for (const one of [method].flat()) list.push({ method: one, path: url, endpoint: config?.endpoint ?? null });
  });
}
