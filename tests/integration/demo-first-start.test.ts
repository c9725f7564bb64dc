import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readConfig } from '#api/config.ts';
import { prepareFirstStart } from '#api/first-start.ts';
import { type Database, openDatabase } from '#db/client.ts';
import { createTestDatabase, type TestDatabase } from '#db/testing.ts';
import { demoSignIn } from '#seed/sign-in.ts';

let database: TestDatabase;
let db: Database;
let dataDir: string;
beforeEach(async () => {
  database = await createTestDatabase();
  db = await openDatabase(database.url);
  dataDir = await mkdtemp(join(tmpdir(), 'escape-ledger-data-'));
});
afterEach(async () => {
  await db.close();
  await database.drop();
  await rm(dataDir, { recursive: true, force: true });
});

const start = async (settings: Record<string, string>) => {
  const said: string[] = [];
  const config = readConfig({ DATA_DIR: dataDir, DATABASE_URL: database.url, ...settings });
  const signIn = await prepareFirstStart({ config, db, url: database.url, log: (line) => said.push(line) });
  return { signIn, said };
};
const admin = { ADMIN_EMAIL: 'boss@example.test', ADMIN_PASSWORD: 'a long enough one' };

test('an empty database gets the demo once, and the administrator of the settings beside it', async () => {
  const first = await start({ SEED: 'demo', ...admin });
  expect(first.signIn).toEqual(['Sign in as boss@example.test with the password from ADMIN_PASSWORD.', ...demoSignIn]);
  expect(first.said).toContain('Demo loaded.');
  const reports = await db.prisma.failure.count();
  expect(reports).toBeGreaterThan(18_000);
  const organisation = await db.prisma.organisation.findFirstOrThrow();
  expect(organisation).toMatchObject({ name: 'Thistlecrane Harness Group', currency: 'EUR' });
  const latest = await db.prisma.failure.findFirstOrThrow({ orderBy: { reportedAt: 'desc' } });
  expect(latest.reportedAt.getTime()).toBeLessThan(Date.now());

  expect(await start({ SEED: 'demo', ...admin })).toEqual({ signIn: [...demoSignIn], said: [] });
  expect(await db.prisma.failure.count()).toBe(reports);
}, 240_000);

test('without the demo there is one administrator and nothing else', async () => {
  const { signIn } = await start({ SEED: 'none' });
  expect(signIn[0]).toMatch(/^Sign in as admin@example\.test with the password /);
  expect([await db.prisma.plant.count(), await db.prisma.person.count()]).toEqual([0, 1]);
});

test('a database that somebody already uses never gets the demo', async () => {
  await start({ SEED: 'none', ...admin });
  expect(await start({ SEED: 'demo', ...admin })).toEqual({ signIn: [], said: [] });
  expect(await db.prisma.plant.count()).toBe(0);
});
