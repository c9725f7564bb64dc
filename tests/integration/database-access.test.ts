import { afterAll, beforeAll, expect, test } from 'vitest';
import { z } from 'zod';
import { type Database, openDatabase } from '#db/client.ts';
import { execute, queryOne, queryRows, sql, txExecute, txOne, txRows } from '#db/sql.ts';
import { createTestDatabase, type TestDatabase } from '#db/testing.ts';

let copy: TestDatabase;
let database: Database;

beforeAll(async () => {
  copy = await createTestDatabase();
  database = await openDatabase(copy.url, { poolSize: 4 });
  await execute(
    database.pool,
    sql`create table sample (id int primary key, big int8, day date, at timestamptz, share numeric, days date[])`,
  );
});
afterAll(async () => {
  await database.close();
  await copy.drop();
});

const Sample = z.object({
  id: z.number(),
  big: z.number(),
  day: z.string(),
  at: z.date(),
  share: z.string(),
  days: z.array(z.string()),
});
const sample = {
  id: 1,
  big: Number.MAX_SAFE_INTEGER,
  day: '2026-03-29',
  at: new Date('2026-03-29T01:30:00.123Z'),
  share: '0.1000',
  days: ['2026-01-01', '2026-12-31'],
};
const insert = sql`insert into sample values (${1}, ${sample.big}, ${sample.day}, ${sample.at}, ${sample.share}, ${sample.days}::date[])`;
const select = sql`select s.* from sample s where s.id = ${1}`;

test('values come back as they were stored', async () => {
  expect(await execute(database.pool, insert)).toBe(1);
  expect(await queryRows(database.pool, select, Sample, { name: 'sample-by-id' })).toEqual([sample]);
  expect(await queryOne(database.pool, select, Sample, { name: 'sample-by-id' })).toEqual(sample);
  expect(await queryOne(database.pool, sql`select 1 as id where false`, z.object({ id: z.number() }))).toBeNull();
});

test('a single row is asked for, so two are an error', async () => {
  await expect(
    queryOne(database.pool, sql`select generate_series(1, 2) as n`, z.object({ n: z.number() })),
  ).rejects.toThrow('at most one row');
});

test('a row that breaks its schema is an error', async () => {
  await expect(queryRows(database.pool, sql`select null::text as day`, z.object({ day: z.string() }))).rejects.toThrow(
    z.ZodError,
  );
});

test('SQL of our own runs inside a Prisma transaction and is undone with it', async () => {
  const Row = z.object({ id: z.number(), big: z.number(), day: z.string(), at: z.date(), share: z.string() });
  const inTransaction = sql`select s.id, s.big, s.day::text, s.at, s.share from sample s where s.id = ${2}`;
  await expect(
    database.prisma.$transaction(async (tx) => {
      expect(await txExecute(tx, sql`insert into sample select ${2}, big, day, at, share, days from sample`)).toBe(1);
      const { days: _days, ...scalar } = sample;
      expect(await txOne(tx, inTransaction, Row)).toEqual({ ...scalar, id: 2, share: '0.1' });
      throw new Error('undo');
    }),
  ).rejects.toThrow('undo');
  expect(await queryRows(database.pool, inTransaction, Row)).toEqual([]);
  expect(await txRows(database.prisma, inTransaction, Row)).toEqual([]);
});

test('every session runs in UTC, without JIT, and stops long statements', async () => {
  const Settings = z.object({ zone: z.string(), jit: z.string(), timeout: z.string() });
  const settings = sql`select current_setting('TimeZone') as zone, current_setting('jit') as jit, current_setting('statement_timeout') as timeout`;
  const expected = [{ zone: 'UTC', jit: 'off', timeout: '1min' }];
  expect(await queryRows(database.pool, settings, Settings)).toEqual(expected);
  expect(await txRows(database.prisma, settings, Settings)).toEqual(expected);
});
