import type { Config } from '#api/config.ts';
import type { Endpoint } from '#contracts/shared/endpoint.ts';
import type { Database } from '#db/client.ts';
import type { Actor } from './actor.ts';
import type { RouteEntry } from './route-list.ts';

declare module 'fastify' {
  interface FastifyInstance {
    db: Database;
    config: Config;
    clock: () => Date;
    /** Every route, for the tests that ask whether one was forgotten. */
    routeList: readonly RouteEntry[];
  }
  interface FastifyRequest {
    actor: Actor | null;
  }
  interface FastifyContextConfig {
    endpoint?: Endpoint;
  }
}
