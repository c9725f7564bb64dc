import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { z } from 'zod';
import { withClient } from '#db/connect.ts';
import { migrate } from '#db/migrate.ts';
import { queryRows, type Sql, sql } from '#db/sql.ts';
import { createTestDatabase, type TestDatabase } from '#db/testing.ts';

let database: TestDatabase;
let folder: string;
beforeEach(async () => {
  database = await createTestDatabase();
  await run('drop schema public cascade; create schema public');
  folder = await mkdtemp(join(tmpdir(), 'escape-ledger-migrations-'));
  await add(
    '20260101000000_first',
    'create table one (id int); create function f() returns int language sql as $$ select 1; $$;',
  );
});
afterEach(async () => {
  await rm(folder, { recursive: true });
  await database.drop();
});

const apply = () => migrate(database.url, () => {}, pathToFileURL(`${folder}/`));
const run = (script: string) => withClient(database.url, (client) => client.query(script));
const ask = <Row>(question: Sql, row: z.ZodType<Row>) =>
  withClient(database.url, (client) => queryRows(client, question, row));
async function add(name: string, script: string): Promise<void> {
  await mkdir(join(folder, name), { recursive: true });
  await writeFile(join(folder, name, 'migration.sql'), script);
}
const tables = async () => {
  const rows = await ask(
    sql`select t.tablename as name from pg_tables t where t.schemaname = 'public' order by 1`,
    z.object({ name: z.string() }),
  );
  return rows.map(({ name }) => name);
};

test('applies what is missing, once, in the order of the names', async () => {
  await add('20260102000000_second', 'alter table one add column note text');
  expect(await apply()).toEqual(['20260101000000_first', '20260102000000_second']);
  expect(await apply()).toEqual([]);
  await add('20260103000000_third', 'create table three (id int)');
  expect(await apply()).toEqual(['20260103000000_third']);
});

test('records each the way prisma migrate deploy does: SHA-256 of the file, finished, one step', async () => {
  await apply();
  const rows = await ask(
    sql`select m.checksum, m.finished_at, m.rolled_back_at, m.logs, m.applied_steps_count as steps from _prisma_migrations m`,
    z.object({
      checksum: z.string(),
      finished_at: z.date(),
      rolled_back_at: z.null(),
      logs: z.null(),
      steps: z.number(),
    }),
  );
  // printf '%s' 'create table one (id int); create function f() returns int language sql as $$ select 1; $$;' | sha256sum
  expect(rows).toEqual([
    expect.objectContaining({ checksum: '6d9a268db7e1bac3c1c949c89b1b7fa8812b43b47197385a270208e1feee40d8', steps: 1 }),
  ]);
});

test('two at once: one applies, the other waits and finds nothing to do', async () => {
  const results = await Promise.all([apply(), apply(), apply()]);
  expect(results.flat()).toEqual(['20260101000000_first']);
});

test('a migration that fails is undone as a whole and tried again next time', async () => {
  await add('20260102000000_second', 'create table two (id int); select 1 / 0');
  await expect(apply()).rejects.toThrow('The migration 20260102000000_second failed and was undone: division by zero');
  expect(await tables()).toEqual(['_prisma_migrations', 'one']);
  await add('20260102000000_second', 'create table two (id int)');
  expect(await apply()).toEqual(['20260102000000_second']);
});

test('an applied migration that was edited is refused, and nothing else is applied', async () => {
  await apply();
  await add('20260101000000_first', 'create table one (id bigint)');
  await add('20260102000000_second', 'create table two (id int)');
  await expect(apply()).rejects.toThrow(
    /20260101000000_first was edited after it was applied: restore .*put the change in a new migration/,
  );
  expect(await tables()).toEqual(['_prisma_migrations', 'one']);
});

test('a database that a newer version migrated is refused', async () => {
  await apply();
  await run(
    "insert into _prisma_migrations (id, checksum, migration_name, finished_at) values ('x', 'x', '20990101000000_later', now())",
  );
  await expect(apply()).rejects.toThrow(
    'The database has the migration 20990101000000_later, which this version lacks',
  );
});

test('a migration that another program left unfinished is refused until it is settled', async () => {
  await apply();
  await run('update _prisma_migrations set finished_at = null');
  await expect(apply()).rejects.toThrow('never finished');
  await run('update _prisma_migrations set rolled_back_at = now(); drop table one; drop function f');
  expect(await apply()).toEqual(['20260101000000_first']);
});
