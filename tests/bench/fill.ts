/** Fills the database straight by COPY, and keeps the same rows as files for DuckDB. */
import { createWriteStream } from 'node:fs';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type pg from 'pg';
import { from } from 'pg-copy-streams';

/** Joins lines to pieces of about 64 kB, and writes each to the file as it passes. */
async function* pieces(lines: Iterable<string>, file: string): AsyncGenerator<string> {
  const copy = createWriteStream(file);
  let piece = '';
  for (const line of lines) {
    piece += line;
    if (piece.length < 65_536) continue;
    if (!copy.write(piece)) await new Promise<void>((resume) => copy.once('drain', resume));
    yield piece;
    piece = '';
  }
  copy.end(piece);
  await new Promise<void>((done) => copy.once('close', done));
  if (piece) yield piece;
}

export const copyIn = (client: pg.ClientBase, target: string, lines: Iterable<string>, file: string): Promise<void> =>
  pipeline(Readable.from(pieces(lines, file)), client.query(from(`copy ${target} from stdin`)));

/** Takes the secondary indexes of a table away and returns how to bring them back: loading is quicker without them. */
export async function withoutIndexes(client: pg.ClientBase, table: string): Promise<() => Promise<void>> {
  const { rows } = await client.query<{ name: string; definition: string }>(
    `select i.indexrelid::regclass::text as name, pg_get_indexdef(i.indexrelid) as definition from pg_index i
     where i.indrelid = $1::regclass and not exists (select from pg_constraint c where c.conindid = i.indexrelid)`,
    [table],
  );
  for (const { name } of rows) await client.query(`drop index ${name}`);
  return async () => {
    for (const { definition } of rows) await client.query(definition);
  };
}
