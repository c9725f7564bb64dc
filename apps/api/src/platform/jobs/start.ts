import type { FastifyInstance } from 'fastify';
import { PgBoss } from 'pg-boss';
import type { Job } from './job.ts';

/** A job whose server went away is taken up again after this long, in seconds. */
const silence = 60;
const kept = 24 * 3600;

/**
 * Runs the jobs now and at their times, each on one of the servers that share the database. What was queued when a server stopped is
 * done by the next one. Returns what stops them: it lets the running ones end.
 */
export async function startJobs(app: FastifyInstance, url: string, jobs: readonly Job[]): Promise<() => Promise<void>> {
  const boss = new PgBoss({
    connectionString: url,
    schema: 'jobs',
    max: 3,
    application_name: 'escape-ledger jobs',
    persistWarnings: false,
    registerInstance: false,
  });
  boss.on('error', (error) => app.log.error(error));
  await boss.start();
  for (const { name, cron, run } of jobs) {
    await boss.createQueue(name, {
      policy: 'singleton',
      retryLimit: 2,
      retryDelay: 30,
      heartbeatSeconds: silence,
      expireInSeconds: 3600,
      deleteAfterSeconds: kept,
    });
    await boss.schedule(name, cron);
    await boss.send(name, null, { singletonSeconds: 30 });
    await boss.work(name, { pollingIntervalSeconds: 5 }, async () => {
      await run(app, app.clock()).catch((error) => {
        app.log.error(error, `The job ${name} failed and is tried again.`);
        throw error;
      });
    });
  }
  const known = new Set(jobs.map(({ name }) => name));
  for (const { name } of await boss.getSchedules()) if (!known.has(name)) await boss.unschedule(name);
  return () => boss.stop({ graceful: true, timeout: 20_000 });
}
