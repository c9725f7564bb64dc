import { randomUUID } from 'node:crypto';
import type pg from 'pg';
import { withClient } from './connect.ts';
import { type Migration, readMigrations } from './migration-files.ts';
import { messageOf, StartError } from './start-error.ts';

/** The key that `prisma migrate deploy` locks with, so that the two never run at once. */
const lockKey = 72707369;

/** The table as Prisma lays it out; both runners read and write the same rows. */
const createTable = `
  create table if not exists _prisma_migrations (
    id varchar(36) primary key not null,
    checksum varchar(64) not null,
    finished_at timestamptz,
    migration_name varchar(255) not null,
    logs text,
    rolled_back_at timestamptz,
    started_at timestamptz not null default now(),
    applied_steps_count integer not null default 0
  )`;

interface Applied {
  migration_name: string;
  checksum: string;
  finished_at: Date | null;
}

/**
 * Applies the migrations that the database lacks, oldest first, each in one transaction.
 * Returns their names. Refuses, changing nothing, when an applied file was edited or the database is newer than this version.
 */
export async function migrate(url: string, log: (line: string) => void = () => {}, folder?: URL): Promise<string[]> {
  const migrations = await readMigrations(folder);
  return withClient(url, async (client) => {
    await client.query('set client_min_messages = warning');
    await client.query('select pg_advisory_lock($1)', [lockKey]);
    await client.query(createTable);
    const pending = pendingOf(migrations, await readApplied(client));
    for (const migration of pending) {
      log(`Migrating the database: ${migration.name}`);
      await apply(client, migration);
    }
    return pending.map(({ name }) => name);
  });
}

async function readApplied(client: pg.Client): Promise<Applied[]> {
  const { rows } = await client.query<Applied>(
    'select migration_name, checksum, finished_at from _prisma_migrations where rolled_back_at is null',
  );
  return rows;
}

function pendingOf(migrations: readonly Migration[], applied: readonly Applied[]): Migration[] {
  const known = new Map(migrations.map((migration) => [migration.name, migration]));
  for (const { migration_name: name, checksum, finished_at } of applied) {
    const migration = known.get(name);
    if (!migration) {
      throw new StartError(
        `The database has the migration ${name}, which this version lacks: start the newer version that made it.`,
      );
    }
    if (finished_at === null) {
      throw new StartError(
        `The migration ${name} was begun by another program and never finished: restore a backup, or settle it with "prisma migrate resolve".`,
      );
    }
    if (checksum !== migration.checksum) {
      throw new StartError(
        `The migration ${name} was edited after it was applied: restore prisma/migrations/${name}/migration.sql and put the change in a new migration.`,
      );
    }
  }
  const done = new Set(applied.map(({ migration_name }) => migration_name));
  return migrations.filter(({ name }) => !done.has(name));
}

async function apply(client: pg.Client, { name, checksum, script }: Migration): Promise<void> {
  try {
    await client.query('begin');
    await client.query(script);
    await client.query(
      `insert into _prisma_migrations (id, checksum, migration_name, started_at, finished_at, applied_steps_count)
       values ($1, $2, $3, now(), clock_timestamp(), 1)`,
      [randomUUID(), checksum, name],
    );
    await client.query('commit');
  } catch (error) {
    await client.query('rollback').catch(() => {});
    throw new StartError(`The migration ${name} failed and was undone: ${messageOf(error)}`, { cause: error });
  }
}
