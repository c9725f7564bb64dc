import type { FastifyInstance } from 'fastify';

/**
 * Work done by the clock. It looks at the database for what is due instead of counting on having been called, and may be run
 * again at any time without doing anything twice; so a missed or repeated run does no harm.
 */
export interface Job {
  /** Small letters and hyphens. */
  name: string;
  /** Minute, hour, day of the month, month, day of the week, in UTC. */
  cron: string;
  run(app: FastifyInstance, at: Date): Promise<unknown>;
}
