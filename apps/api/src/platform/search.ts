import { join, type Sql, sql } from '#db/sql.ts';

/**
 * Full text over `failure_fact f`: every word must begin a word of the report's texts and numbers, or a code of its
 * housing, terminal, wire, tool or customer. Words that hyphens or slashes hold together are found as they stand.
 */
export const searchWhere = (q: string): Sql => join(q.split(/\s+/).slice(0, 12).map(wordWhere), ' and ');

/** Codes come second and are looked for only where the master data has such a code, so that a plain word needs one index. */
function wordWhere(word: string): Sql {
  const pattern = `${word.replaceAll(/[\\%_]/g, '\\$&')}%`;
  return sql`f.id in (
    select s.id from failure s
    where s.search @@ (nullif(phraseto_tsquery('simple', ${word})::text, '') || ':*')::tsquery
    union all
    select p.id from failure p
    where exists (
        select from housing where code ilike ${pattern} union all select from terminal where code ilike ${pattern}
        union all select from wire where code ilike ${pattern} union all select from tool where code ilike ${pattern}
        union all select from customer where code ilike ${pattern})
      and (p.housing_id = any(array(select id from housing where code ilike ${pattern}))
        or p.terminal_id = any(array(select id from terminal where code ilike ${pattern}))
        or p.wire_id = any(array(select id from wire where code ilike ${pattern}))
        or p.tool_id = any(array(select id from tool where code ilike ${pattern}))
        or p.customer_id = any(array(select id from customer where code ilike ${pattern}))))`;
}
