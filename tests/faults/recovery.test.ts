import { readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type App, endAll, isHealthy, startApp } from './support/app-process.ts';
import { birthOf, databaseSettings, hasPidFile, postmasterPid, temporaryDataDir } from './support/data-dir.ts';
import { processesNaming, until } from './support/processes.ts';

let dataDir: ReturnType<typeof temporaryDataDir>;
let app: App;
let birth: string;

beforeEach(async () => {
  dataDir = temporaryDataDir();
  app = await startApp({ dataDir: dataDir.path });
  expect(await isHealthy(app.port), app.output()).toBe(true);
  birth = await birthOf(dataDir.path);
});
afterEach(async () => {
  await endAll();
  await dataDir.remove();
});

async function expectRecovery(): Promise<App> {
  const next = await startApp({ dataDir: dataDir.path });
  expect(await isHealthy(next.port), next.output()).toBe(true);
  expect(await birthOf(dataDir.path)).toBe(birth);
  return next;
}

async function expectCleanStop(running: App): Promise<void> {
  running.signal('SIGINT');
  expect(await running.ended).toBe(0);
  expect(hasPidFile(dataDir.path)).toBe(false);
  expect(processesNaming(databaseSettings(dataDir.path).folder)).toEqual([]);
}

test('after kill -9 of the application the next start joins the running database', async () => {
  const postmaster = postmasterPid(dataDir.path);
  app.signal('SIGKILL');
  await app.ended;

  const next = await expectRecovery();
  expect(postmasterPid(dataDir.path)).toBe(postmaster);
  await expectCleanStop(next);
});

test('after kill -9 of the database the running application brings it back', async () => {
  process.kill(postmasterPid(dataDir.path), 'SIGKILL');
  await until('the database to come back', () => app.output().includes('The database is back'));
  await until('the service to be healthy again', () => isHealthy(app.port));
  expect(await birthOf(dataDir.path)).toBe(birth);
  await expectCleanStop(app);
});

test('kill -9 of the database and Ctrl-C at the same moment: it stops, and the next start recovers', async () => {
  process.kill(postmasterPid(dataDir.path), 'SIGKILL');
  app.signal('SIGINT');
  expect(await app.ended, app.output()).toBe(0);

  await expectCleanStop(await expectRecovery());
});

test('after kill -9 of both the next start recovers', async () => {
  app.signal('SIGKILL');
  process.kill(postmasterPid(dataDir.path), 'SIGKILL');
  await app.ended;

  await expectCleanStop(await expectRecovery());
});

test('a lock file whose process id now belongs to a stranger does not hinder the start', async () => {
  app.signal('SIGKILL');
  process.kill(postmasterPid(dataDir.path), 'SIGKILL');
  await app.ended;
  const file = join(databaseSettings(dataDir.path).folder, 'postmaster.pid');
  const [, ...rest] = readFileSync(file, 'utf8').split('\n');
  writeFileSync(file, [process.pid, ...rest].join('\n'));

  await expectCleanStop(await expectRecovery());
});

test('when the port of the database was taken meanwhile, it moves to another and remembers that', async () => {
  app.signal('SIGTERM');
  await app.ended;
  const before = databaseSettings(dataDir.path).port;
  const squatter = createServer().listen(before, '127.0.0.1');
  try {
    await expectRecovery();
    expect(databaseSettings(dataDir.path).port).not.toBe(before);
  } finally {
    squatter.close();
  }
});
