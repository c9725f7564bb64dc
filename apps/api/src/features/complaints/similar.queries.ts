import type { PlantScope } from '#api/platform/actor.ts';
import { likenesses, SimilarCase, type similarCases } from '#contracts/complaints.ts';
import type { Output } from '#contracts/shared/endpoint.ts';
import type { Database } from '#db/client.ts';
import { join, queryRows, type Sql, sql } from '#db/sql.ts';

export type Sought = NonNullable<Output<typeof similarCases.query>>;

/** What each likeness counts, and how much is worth being offered. Choice of our own. */
const weights = { reference: 6, lot: 4, tool: 3, part: 2, effect: 1, words: 2 };
const least = 3;
const most = 8;
/** Of the words sought, as pg_trgm's word_similarity measures it. */
const alikeWords = 0.5;
const yearsBack = 3;

/** The lots and tools sought, with those of the reports that the complaint itself is made of. */
const sought = ({ plantId, tools = [], lots = [], except }: Sought): Sql => sql`
  with own as (select f.tool_id, f.reel_lot, f.housing_lot from complaint_failure l
      join failure f on f.id = l.failure_id and f.plant_id = l.plant_id
      where l.complaint_id = ${except ?? null}::uuid and l.plant_id = ${plantId}::uuid),
    sought as (select
      array(select unnest(${tools}::uuid[]) union select tool_id from own where tool_id is not null) as tools,
      array(select lower(unnest(${lots}::text[])) union select lower(reel_lot) from own where reel_lot is not null
        union select lower(housing_lot) from own where housing_lot is not null) as lots)`;

const inScope = (scope: PlantScope, table: Sql): Sql =>
  scope === 'all' ? sql`true` : sql`${table}.plant_id = any(${[...scope]}::uuid[])`;

const sameLots = (lots: Sql): Sql =>
  sql`exists (select from unnest(${lots}) m (mark) where lower(m.mark) = any(s.lots))`;

const complaints = (scope: PlantScope, it: Sought, at: Date): Sql => sql`
  select 'complaint' as kind, c.id, c.number, c.plant_id, c.title, (c.received_at at time zone 'UTC')::date as on,
    c.closed_at is null as open, null::text as source,
    (select f.cause::text from complaint_failure l join failure f on f.id = l.failure_id and f.plant_id = l.plant_id
      where l.complaint_id = c.id and f.cause is not null group by f.cause order by count(*) desc, f.cause limit 1) as cause,
    c.customer_id = ${it.customerId ?? null}::uuid and lower(c.customer_ref) = lower(${it.customerRef ?? null}) as reference,
    ${sameLots(sql`c.lots`)} or exists (select from complaint_failure l join failure f on f.id = l.failure_id and f.plant_id = l.plant_id
      where l.complaint_id = c.id and (lower(f.reel_lot) = any(s.lots) or lower(f.housing_lot) = any(s.lots))) as lot,
    exists (select from complaint_failure l join failure f on f.id = l.failure_id and f.plant_id = l.plant_id
      where l.complaint_id = c.id and f.tool_id = any(s.tools)) as tool,
    c.housing_id = ${it.housingId ?? null}::uuid or c.terminal_id = ${it.terminalId ?? null}::uuid as part,
    c.effect = ${it.effect ?? null}::effect as effect,
    word_similarity(lower(${it.text ?? ''}), c.search) >= ${alikeWords} as words,
    c.customer_id = ${it.customerId ?? null}::uuid and c.received_at >= ${at}::timestamptz - interval '90 days' as recent
  from complaint c cross join sought s
  where ${inScope(scope, sql`c`)} and c.id is distinct from ${it.except ?? null}::uuid
    and c.received_at >= ${at}::timestamptz - ${`${yearsBack} years`}::interval`;

/** Reports from outside with the lot or tool sought, or with the part and the effect, found in the last year. */
function reports(scope: PlantScope, it: Sought, at: Date): Sql {
  const year = sql`f.found_on >= (${at}::timestamptz - interval '1 year')::date`;
  const part = sql`(f.housing_id = ${it.housingId ?? null}::uuid or f.terminal_id = ${it.terminalId ?? null}::uuid)`;
  const candidates = [
    sql`(select f.id from failure f, sought s where f.search @@ (select string_agg(phraseto_tsquery('simple', l)::text, ' | ')::tsquery
      from unnest(s.lots) l) and ${inScope(scope, sql`f`)} and ${year} order by f.found_on desc limit 200)`,
    sql`(select f.id from failure f, sought s where f.tool_id = any(s.tools) and ${inScope(scope, sql`f`)} and ${year}
      and f.source in ('customer', 'field') order by f.found_on desc limit 200)`,
    sql`(select f.id from failure f where f.source in ('customer', 'field') and ${part} and f.effect = ${it.effect ?? null}::effect
      and ${inScope(scope, sql`f`)} and ${year} order by f.found_on desc limit 200)`,
  ];
  return sql`
    select 'report' as kind, f.id, f.number, f.plant_id, coalesce(left(f.note, 120), '') as title, f.found_on as on,
      null::boolean as open, f.source::text, f.cause::text, f.customer_id = ${it.customerId ?? null}::uuid
        and lower(f.customer_ref) = lower(${it.customerRef ?? null}) as reference,
      lower(f.reel_lot) = any(s.lots) or lower(f.housing_lot) = any(s.lots) as lot, f.tool_id = any(s.tools) as tool,
      ${part} as part, f.effect = ${it.effect ?? null}::effect as effect,
      word_similarity(lower(${it.text ?? ''}), lower(coalesce(f.note, ''))) >= ${alikeWords} as words, false as recent
    from failure f cross join sought s
    where f.id in (${join(candidates, ' union ')}) and f.voided_at is null and f.source in ('customer', 'field')
      and not exists (select from complaint_failure l where l.complaint_id = ${it.except ?? null}::uuid and l.failure_id = f.id)`;
}

const score = join(
  likenesses.map((word) => sql`${weights[word]} * coalesce(x.${column(word)}, false)::int`),
  ' + ',
);
const shares = sql`array_remove(array[${join(
  likenesses.map((word) => sql`case when x.${column(word)} then ${word}::text end`),
)}], null)`;

function column(word: (typeof likenesses)[number]): Sql {
  return {
    reference: sql`reference`,
    lot: sql`lot`,
    part: sql`part`,
    tool: sql`tool`,
    effect: sql`effect`,
    words: sql`words`,
  }[word];
}

/** Past complaints and reports that share enough with what is sought, the likest first. */
export const findSimilar = (db: Database, scope: PlantScope, it: Sought, at: Date): Promise<SimilarCase[]> =>
  queryRows(
    db.pool,
    sql`${sought(it)}
      select x.kind, x.id, x.number, p.code as "plantCode", x.title, x.on::text as on, x.open, x.source, x.cause,
        ${shares} as shares, coalesce(x.kind = 'complaint' and (x.reference or (x.recent and x.part and x.lot)), false) as duplicate
      from (${complaints(scope, it, at)} union all ${reports(scope, it, at)}) x
      join plant p on p.id = x.plant_id
      where ${score} >= ${least}
      order by ${score} desc, x.on desc, x.id limit ${most}`,
    SimilarCase,
  );
