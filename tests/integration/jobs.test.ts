/** The clock's work on several servers that share one database. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { z } from 'zod';
import type { Job } from '#api/platform/jobs/job.ts';
import { startJobs } from '#api/platform/jobs/start.ts';
import { withClient } from '#db/connect.ts';
import { queryRows, type Sql, sql } from '#db/sql.ts';
import { createTestDatabase, type TestDatabase } from '#db/testing.ts';
import { createTestApp, type TestApp } from '#tests/support/app.ts';

let app: TestApp;
let database: TestDatabase;
beforeAll(async () => {
  app = await createTestApp();
  database = await createTestDatabase();
});
afterAll(async () => {
  await app.close();
  await database.drop();
});

const ask = async (question: Sql): Promise<number> =>
  (await withClient(database.url, (client) => queryRows(client, question, z.object({ jobs: z.int() }))))[0]!.jobs;

/** Waits for what must happen; how long it takes is not looked at. */
async function until(happened: () => boolean | Promise<boolean>): Promise<void> {
  while (!(await happened())) await new Promise((resolve) => setTimeout(resolve, 100));
}

test('two servers do a due job once, in a schema of its own, and stop without leaving anything running', async () => {
  let runs = 0;
  let running = 0;
  let most = 0;
  const job: Job = {
    name: 'count',
    cron: '* * * * *',
    run: async () => {
      runs += 1;
      most = Math.max(most, ++running);
      await new Promise((resolve) => setTimeout(resolve, 300));
      running -= 1;
    },
  };
  const url = database.url;
  const stops = await Promise.all([startJobs(app.app, url, [job]), startJobs(app.app, url, [job])]);
  await until(() => runs > 0);
  await Promise.all(stops.map((stop) => stop()));
  expect({ running, most }).toEqual({ running: 0, most: 1 });
  const done = await ask(sql`select count(*) as jobs from jobs.job where name = 'count' and state = 'completed'`);
  expect(runs).toBe(done);
  const connections = sql`select count(*) as jobs from pg_stat_activity where application_name = 'escape-ledger jobs' and datname = current_database()`;
  await until(async () => (await ask(connections)) === 0);
}, 120_000);

test('what a server left undone is done by the next one', async () => {
  const url = database.url;
  const done: string[] = [];
  const failing: Job = {
    name: 'unlucky',
    cron: '0 0 1 1 *',
    run: () => Promise.reject(new Error('the server went away')),
  };
  const stop = await startJobs({ ...app.app, log: { error: () => {} } } as never, url, [failing]);
  await until(
    async () =>
      (await ask(sql`select count(*) as jobs from jobs.job where name = 'unlucky' and state = 'retry'`)) === 1,
  );
  await stop();
  await withClient(url, (client) => client.query("update jobs.job set start_after = now() where name = 'unlucky'"));
  const working: Job = { ...failing, run: async () => void done.push('done') };
  const stopNext = await startJobs(app.app, url, [working]);
  await until(() => done.length > 0);
  await stopNext();
  expect(
    await ask(sql`select count(*) as jobs from jobs.job where name = 'unlucky' and state in ('retry', 'active')`),
  ).toBe(0);
}, 120_000);
