/** The SQL in prisma/migrations makes the tables, prisma/schema describes them: what they say must be the same. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { z } from 'zod';
import { withClient } from '#db/connect.ts';
import { queryRows, type Sql, sql } from '#db/sql.ts';
import { createTestDatabase, type TestDatabase } from '#db/testing.ts';
import { type Datamodel, type Model, type ModelField, readDatamodel } from '../support/database-datamodel.ts';

let database: TestDatabase;
let datamodel: Datamodel;
beforeAll(async () => {
  database = await createTestDatabase();
  datamodel = readDatamodel();
});
afterAll(() => database.drop());

const ask = <Row>(question: Sql, row: z.ZodType<Row>) =>
  withClient(database.url, (client) => queryRows(client, question, row));
const tableOf = ({ name, dbName }: { name: string; dbName?: string | null }) => dbName ?? name;

test('the same tables with the same columns, types and nullability', async () => {
  // A tsvector is the one type here that Prisma cannot hold; such columns are left to SQL.
  const columns = await ask(
    sql`select c.relname as "table", a.attname as "column", format_type(a.atttypid, a.atttypmod) as type, a.attnotnull as required
        from pg_attribute a join pg_class c on c.oid = a.attrelid
        where c.relnamespace = 'public'::regnamespace and c.relkind in ('r', 'p') and c.relname <> '_prisma_migrations'
          and a.attnum > 0 and not a.attisdropped and a.atttypid <> 'tsvector'::regtype`,
    z.object({ table: z.string(), column: z.string(), type: z.string(), required: z.boolean() }),
  );
  const inDatabase = columns.map(({ table, column, type, required }) => describe(table, column, type, required));
  const inSchema = datamodel.models.flatMap((model) =>
    model.fields
      .filter(({ kind }) => kind !== 'object')
      .map((field) => describe(tableOf(model), tableOf(field), sqlType(field), field.isRequired)),
  );
  expect(inSchema.sort()).toEqual(inDatabase.sort());
});

test('the same vocabularies in the same order', async () => {
  const enums = await ask(
    sql`select t.typname as name, array_agg(e.enumlabel::text order by e.enumsortorder) as words
        from pg_enum e join pg_type t on t.oid = e.enumtypid
        where t.typnamespace = 'public'::regnamespace group by t.typname`,
    z.object({ name: z.string(), words: z.array(z.string()) }),
  );
  const inSchema = datamodel.enums.map((one) => ({ name: tableOf(one), words: one.values.map(tableOf) }));
  expect(byName(inSchema)).toEqual(byName(enums));
});

test('what the schema calls unique is unique in the database', async () => {
  const indexes = await ask(
    sql`select c.relname as "table", array_agg(a.attname::text order by a.attname) as columns
        from pg_index i join pg_class c on c.oid = i.indrelid
          join pg_attribute a on a.attrelid = i.indrelid and a.attnum = any(i.indkey[0:i.indnkeyatts - 1])
        where c.relnamespace = 'public'::regnamespace and i.indisunique and i.indpred is null and i.indexprs is null
        group by c.relname, i.indexrelid`,
    z.object({ table: z.string(), columns: z.array(z.string()) }),
  );
  const inDatabase = indexes.map(({ table, columns }) => `${table} (${columns.join(', ')})`);
  const inSchema = datamodel.models.flatMap((model) =>
    keysOf(model).map(
      (fields) =>
        `${tableOf(model)} (${fields
          .map((field) => columnOf(model, field))
          .sort()
          .join(', ')})`,
    ),
  );
  expect(inSchema.length).toBeGreaterThanOrEqual(datamodel.models.length);
  expect(inDatabase).toEqual(expect.arrayContaining(inSchema));
});

const describe = (table: string, column: string, type: string, required: boolean) =>
  `${table}.${column} ${type}${required ? ' not null' : ''}`;

const byName = <Item extends { name: string }>(items: Item[]) => items.sort((a, b) => a.name.localeCompare(b.name));

function keysOf({ fields, primaryKey, uniqueFields }: Model): string[][] {
  const single = fields.filter(({ isId, isUnique }) => isId || isUnique).map(({ name }) => [name]);
  return [...single, ...(primaryKey ? [primaryKey.fields] : []), ...uniqueFields];
}

function columnOf(model: Model, name: string): string {
  return tableOf(model.fields.find((field) => field.name === name)!);
}

/** The column type that a field asks for, in PostgreSQL's own words. */
function sqlType({ kind, type, nativeType, isList }: ModelField): string {
  const [native, values] = nativeType ?? [type, []];
  const size = values.length > 0 ? `(${values.join(',')})` : '';
  const base = kind === 'enum' ? tableOf(datamodel.enums.find(({ name }) => name === type)!) : named(native, size);
  return isList ? `${base}[]` : base;
}

const names: Record<string, string> = {
  String: 'text',
  Int: 'integer',
  BigInt: 'bigint',
  Boolean: 'boolean',
  Float: 'double precision',
  Json: 'jsonb',
  Bytes: 'bytea',
  Uuid: 'uuid',
  SmallInt: 'smallint',
  Real: 'real',
  Date: 'date',
  Char: 'character',
  VarChar: 'character varying',
  Decimal: 'numeric',
};

function named(native: string, size: string): string {
  // timestamptz(6) and timestamptz are the same: six digits are all there are.
  if (native === 'Timestamptz' && size === '(6)') return 'timestamp with time zone';
  const name = names[native];
  if (!name) throw new Error(`no SQL name is known here for ${native}${size}: add it`);
  return name + size;
}
