/** Root can stand in for every kind of user. Run by an ordinary user, the other suites here cover that user's half. */
import { chmodSync, chownSync, existsSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { destroyEmbedded } from '#db/embedded.ts';
import { type App, endAll, isHealthy, startApp } from './support/app-process.ts';
import { copyClone, ordinaryUser } from './support/clone-copy.ts';
import { birthOf, databaseSettings, hasPidFile, isRoot } from './support/data-dir.ts';
import { processesNaming } from './support/processes.ts';

const sharedRoot = '/var/lib/escape-ledger';
const sharedRootWasThere = existsSync(sharedRoot);

async function stop(app: App, dataDir: string): Promise<void> {
  app.signal('SIGTERM');
  expect(await app.ended).toBe(0);
  expect(hasPidFile(dataDir)).toBe(false);
  expect(processesNaming(databaseSettings(dataDir).folder)).toEqual([]);
}

describe.runIf(isRoot)('a clone in a home that others cannot enter', () => {
  let home: ReturnType<typeof copyClone>;
  let dataDir: string;
  const open = (owner?: { uid: number; gid: number }) => {
    home = copyClone(0o700, owner);
    dataDir = join(home.folder, 'data');
  };
  afterEach(async () => {
    await endAll();
    if (existsSync(join(dataDir, 'database.json'))) await destroyEmbedded(dataDir);
    home.remove();
  });
  afterAll(() => {
    if (!sharedRootWasThere) rmSync(sharedRoot, { recursive: true, force: true });
  });

  test('started by root, keeps its database where PostgreSQL can reach it, and finds it again', async () => {
    open();
    const first = await startApp({ dataDir, folder: home.folder });
    expect(await isHealthy(first.port), first.output()).toBe(true);
    const { folder } = databaseSettings(dataDir);
    expect(folder.startsWith(`${sharedRoot}/`)).toBe(true);
    expect(statSync(folder).uid).not.toBe(0);
    expect(statSync(folder).mode & 0o777).toBe(0o700);
    expect(statSync(join(dataDir, 'database.json')).mode & 0o777).toBe(0o600);
    const birth = await birthOf(dataDir);
    await stop(first, dataDir);

    const second = await startApp({ dataDir, folder: home.folder });
    expect(await birthOf(dataDir)).toBe(birth);
    await stop(second, dataDir);
  });

  test('started by its owner, keeps its database inside', async () => {
    const user = ordinaryUser();
    open(user);
    const app = await startApp({ dataDir, folder: home.folder, user });
    expect(await isHealthy(app.port), app.output()).toBe(true);
    expect(databaseSettings(dataDir).folder).toBe(join(dataDir, 'postgres'));
    expect(statSync(databaseSettings(dataDir).folder).uid).toBe(user.uid);
    await stop(app, dataDir);
  });
});

describe.runIf(isRoot)('one DATA_DIR and two users', () => {
  let parent: string;
  let home: ReturnType<typeof copyClone>;
  const user = isRoot ? ordinaryUser() : { uid: 0, gid: 0 };
  beforeAll(() => {
    home = copyClone(0o755);
    parent = mkdtempSync(join(tmpdir(), 'escape-ledger-fault-'));
    chmodSync(parent, 0o755);
    chownSync(parent, user.uid, user.gid);
  });
  afterAll(async () => {
    await endAll();
    if (existsSync(join(parent, 'data/database.json'))) await destroyEmbedded(join(parent, 'data'));
    rmSync(parent, { recursive: true, force: true });
    home.remove();
  });

  test('what an ordinary user began, root continues on that user’s behalf', async () => {
    const dataDir = join(parent, 'data');
    const first = await startApp({ dataDir, folder: home.folder, user });
    expect(await isHealthy(first.port), first.output()).toBe(true);
    const birth = await birthOf(dataDir);
    await stop(first, dataDir);

    const second = await startApp({ dataDir, folder: home.folder });
    expect(await isHealthy(second.port), second.output()).toBe(true);
    expect(await birthOf(dataDir)).toBe(birth);
    expect(statSync(databaseSettings(dataDir).folder).uid).toBe(user.uid);
    await stop(second, dataDir);
  });
});
