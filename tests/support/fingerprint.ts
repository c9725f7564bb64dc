import { z } from 'zod';
import type { Database } from '#db/client.ts';
import { queryOne, queryRows, Sql, sql } from '#db/sql.ts';

/** What a session writes about itself when it is used. */
const busy = new Set(['session', '_prisma_migrations']);

/**
 * Rows and newest writing transaction of every table: equal before and after exactly when nothing was written or removed.
 * PostgreSQL gives every written row its transaction's number (xmin), and later transactions have higher ones.
 */
export async function fingerprinter({ pool }: Database): Promise<() => Promise<string>> {
  const tables = await queryRows(
    pool,
    sql`select t.table_name as name from information_schema.tables t
      where t.table_schema = 'public' and t.table_type = 'BASE TABLE' order by t.table_name`,
    z.object({ name: z.string() }),
  );
  const digests = tables
    .filter(({ name }) => !busy.has(name))
    .map(({ name }) => `(select concat(count(*), ':', max(r.xmin::text::bigint)) from "${name}" r)`);
  const question = new Sql([`select concat_ws(' ', ${digests.join(', ')}) as digest`], []);
  return async () => (await queryOne(pool, question, z.object({ digest: z.string() })))?.digest ?? '';
}
