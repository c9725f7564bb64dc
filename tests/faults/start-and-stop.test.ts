import { spawn } from 'node:child_process';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { clone, endAll, freePort, isHealthy, launch, startApp, watch } from './support/app-process.ts';
import { birthOf, databaseSettings, hasPidFile, temporaryDataDir } from './support/data-dir.ts';
import { processesNaming, until } from './support/processes.ts';

let dataDir: ReturnType<typeof temporaryDataDir>;
beforeEach(() => {
  dataDir = temporaryDataDir();
});
afterEach(async () => {
  await endAll();
  await dataDir.remove();
});

test.each(['SIGINT', 'SIGTERM'] as const)(
  'a fresh start serves, and %s stops application and database cleanly',
  async (signal) => {
    const app = await startApp({ dataDir: dataDir.path });
    expect(app.output()).toContain('Escape Ledger is ready');
    expect(processesNaming(databaseSettings(dataDir.path).folder)).not.toEqual([]);

    app.signal(signal);
    expect(await app.ended).toBe(0);
    expect(hasPidFile(dataDir.path)).toBe(false);
    expect(processesNaming(databaseSettings(dataDir.path).folder)).toEqual([]);
  },
);

test('a second start finds the same database on the same port', async () => {
  const first = await startApp({ dataDir: dataDir.path });
  const birth = await birthOf(dataDir.path);
  const { port } = databaseSettings(dataDir.path);
  first.signal('SIGTERM');
  await first.ended;

  const second = await startApp({ dataDir: dataDir.path });
  expect(second.output()).not.toContain('Creating the database');
  expect(await birthOf(dataDir.path)).toBe(birth);
  expect(databaseSettings(dataDir.path).port).toBe(port);
});

test('Ctrl-C while it is still starting leaves no database running', async () => {
  const app = await launch({ dataDir: dataDir.path });
  await until('the database to be created', () => app.output().includes('Migrating the database'));
  app.signal('SIGINT');
  await app.ended;
  expect(processesNaming(databaseSettings(dataDir.path).folder)).toEqual([]);
});

test('npm start ends cleanly on the Ctrl-C of a terminal, which signals every process of the group', async () => {
  const port = await freePort();
  const child = spawn('npm', ['start'], {
    cwd: clone,
    detached: true,
    env: { ...process.env, PORT: String(port), DATA_DIR: dataDir.path, SEED: 'none' },
  });
  const app = watch(child, port);
  await until('the service to answer', () => isHealthy(port), 120);

  process.kill(-child.pid!, 'SIGINT');
  await app.ended;
  expect(app.output()).toContain('Stopping');
  await until('the database to stop', () => processesNaming(databaseSettings(dataDir.path).folder).length === 0);
  expect(hasPidFile(dataDir.path)).toBe(false);
});

test('two starts at once on one fresh DATA_DIR share one database, and the last one out stops it', async () => {
  const [one, two] = await Promise.all([startApp({ dataDir: dataDir.path }), startApp({ dataDir: dataDir.path })]);
  expect(await isHealthy(one.port), one.output()).toBe(true);
  expect(await isHealthy(two.port), two.output()).toBe(true);

  one.signal('SIGTERM');
  expect(await one.ended).toBe(0);
  expect(await isHealthy(two.port)).toBe(true);

  two.signal('SIGTERM');
  expect(await two.ended).toBe(0);
  expect(processesNaming(databaseSettings(dataDir.path).folder)).toEqual([]);
});
