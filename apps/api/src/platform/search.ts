import { z } from 'zod';
import type { Database } from '#db/client.ts';
import { join, queryOne, queryRows, raw, type Sql, sql } from '#db/sql.ts';

const wordsOf = (q: string): string[] => q.split(/\s+/).slice(0, 12);
const beginning = (word: string): string => `${word.replaceAll(/[\\%_]/g, '\\$&')}%`;
const coded = [raw('housing'), raw('terminal'), raw('wire'), raw('tool'), raw('customer')];

const anyCode = (pattern: Sql | string): Sql =>
  join(
    coded.map((table) => sql`select from ${table} where code ilike ${pattern}`),
    ' union all ',
  );

/** What is known of a search before it is planned. The answer is the same without it; the list is quicker with it. */
export interface Known {
  /** The word begins a code of the master data. */
  isCode(word: string): boolean;
  /** The words that are no codes select few reports. */
  few: boolean;
}
export const nothingKnown: Known = { isCode: () => true, few: false };

/** As many reports as are sorted in no time. */
const aFew = 5000;

/** Looks up which words are codes, and whether the others are rare: PostgreSQL takes every unusual word for equally rare. */
export async function lookInto(db: Database, q: string): Promise<Known> {
  const words = wordsOf(q);
  const rows = await queryRows(
    db.pool,
    sql`select w.word from unnest(${words}::text[], ${words.map(beginning)}::text[]) as w (word, beginning)
      where exists (${anyCode(raw('w.beginning'))})`,
    z.object({ word: z.string() }),
  );
  const codes = new Set(rows.map(({ word }) => word));
  const isCode = (word: string) => codes.has(word);
  const texts = words.filter((word) => !isCode(word));
  if (texts.length === 0) return { isCode, few: false };
  const hits = await queryOne(
    db.pool,
    sql`select count(*) as hits from (select from failure s where ${textWhere(raw('s'), texts)} limit ${aFew + 1}) h`,
    z.object({ hits: z.int() }),
  );
  return { isCode, few: (hits?.hits ?? 0) <= aFew };
}

/**
 * Full text over `failure_fact f`: every word must begin a word of the report's texts and numbers, or a code of its
 * housing, terminal, wire, tool or customer. Words that hyphens or slashes hold together are found as they stand.
 */
export function searchWhere(q: string, { isCode, few }: Known): Sql {
  const words = wordsOf(q);
  const texts = words.filter((word) => !isCode(word));
  const byText = few
    ? sql`f.id = any(array(select s.id from failure s where ${textWhere(raw('s'), texts)}))`
    : textWhere(raw('f'), texts);
  return join([...(texts.length ? [byText] : []), ...words.filter(isCode).map(textOrCode)], ' and ');
}

const textQuery = (word: string) => sql`(nullif(phraseto_tsquery('simple', ${word})::text, '') || ':*')::tsquery`;
const textWhere = (table: Sql, words: readonly string[]): Sql =>
  join(
    words.map((word) => sql`${table}.search @@ ${textQuery(word)}`),
    ' and ',
  );

function textOrCode(word: string): Sql {
  const pattern = beginning(word);
  return sql`f.id in (
    select s.id from failure s where s.search @@ ${textQuery(word)}
    union all
    select p.id from failure p
    where exists (${anyCode(pattern)}) and (p.housing_id = any(array(select id from housing where code ilike ${pattern}))
      or p.terminal_id = any(array(select id from terminal where code ilike ${pattern}))
      or p.wire_id = any(array(select id from wire where code ilike ${pattern}))
      or p.tool_id = any(array(select id from tool where code ilike ${pattern}))
      or p.customer_id = any(array(select id from customer where code ilike ${pattern}))))`;
}
