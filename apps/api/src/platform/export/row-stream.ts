import QueryStream from 'pg-query-stream';
import type { z } from 'zod';
import type { Database } from '#db/client.ts';
import type { Sql } from '#db/sql.ts';
import { types } from '#db/types.ts';

/** The rows of a query one by one, whatever their number; the connection is given back when the reader stops. */
export async function* streamRows<Row>(db: Database, query: Sql, row: z.ZodType<Row>): AsyncGenerator<Row> {
  const client = await db.pool.connect();
  const stream = client.query(new QueryStream(query.text, [...query.values], { batchSize: 500, types }));
  try {
    for await (const value of stream) yield row.parse(value);
  } finally {
    stream.destroy();
    client.release();
  }
}
