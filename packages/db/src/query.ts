import type pg from 'pg';
import type { z } from 'zod';
import type { Sql } from './sql.ts';
import { safeInteger, types } from './types.ts';

type Client = Pick<pg.ClientBase, 'query'> | Pick<pg.Pool, 'query'>;
/** The part of a Prisma client or transaction that takes SQL. */
interface RawTx {
  $queryRawUnsafe<Result>(query: string, ...values: unknown[]): PromiseLike<Result>;
  $executeRawUnsafe(query: string, ...values: unknown[]): PromiseLike<number>;
}
export interface QueryOptions {
  /** Prepares the statement once per connection under this name; the text must then never vary. For hot routes. */
  name?: string;
}

export async function queryRows<Row>(
  client: Client,
  fragment: Sql,
  row: z.ZodType<Row>,
  { name }: QueryOptions = {},
): Promise<Row[]> {
  const result = await client.query({ name, text: fragment.text, values: [...fragment.values], types });
  return result.rows.map((value) => row.parse(value));
}

/** The only row, or null. Two rows are an error: the question was meant for one. */
export async function queryOne<Row>(
  client: Client,
  fragment: Sql,
  row: z.ZodType<Row>,
  options?: QueryOptions,
): Promise<Row | null> {
  return single(await queryRows(client, fragment, row, options));
}

/** Runs a statement for its effect; returns how many rows it touched. */
export async function execute(client: Client, fragment: Sql): Promise<number> {
  const result = await client.query({ text: fragment.text, values: [...fragment.values], types });
  return result.rowCount ?? 0;
}

/**
 * `queryRows` inside a Prisma transaction. int8 → number and numeric → string as there; Prisma hands a `date` column over as
 * a Date at midnight UTC, so select it as `day::text` where the row schema wants a string.
 */
export async function txRows<Row>(tx: RawTx, fragment: Sql, row: z.ZodType<Row>): Promise<Row[]> {
  const rows = await tx.$queryRawUnsafe<Record<string, unknown>[]>(fragment.text, ...fragment.values);
  return rows.map((value) => row.parse(plain(value)));
}

export async function txOne<Row>(tx: RawTx, fragment: Sql, row: z.ZodType<Row>): Promise<Row | null> {
  return single(await txRows(tx, fragment, row));
}

export async function txExecute(tx: RawTx, fragment: Sql): Promise<number> {
  return tx.$executeRawUnsafe(fragment.text, ...fragment.values);
}

function single<Row>(rows: Row[]): Row | null {
  if (rows.length > 1) throw new Error(`expected at most one row, got ${rows.length}`);
  return rows[0] ?? null;
}

function plain(row: Record<string, unknown>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(row).map(([column, value]) => [column, plainValue(value)]));
}

function plainValue(value: unknown): unknown {
  if (typeof value === 'bigint') return safeInteger(value);
  if (Array.isArray(value)) return value.map(plainValue);
  if (isDecimal(value)) return value.toFixed();
  return value;
}

/** Prisma's Decimal comes from a bundled copy of its class, so it is known by its methods. */
function isDecimal(value: unknown): value is { toFixed(): string } {
  return typeof value === 'object' && value !== null && 'toFixed' in value && 'precision' in value;
}
