import { z } from 'zod';
import type { PlantScope } from '#api/platform/actor.ts';
import { decodeCursor, toPage } from '#api/platform/cursor.ts';
import {
  AskedReadAcross,
  Lesson,
  likenesses,
  type listLessons,
  type listReadAcross,
  type offerLessons,
} from '#contracts/lessons.ts';
import type { Output } from '#contracts/shared/endpoint.ts';
import type { Database, Tx } from '#db/client.ts';
import { empty, join, queryRows, raw, type Sql, sql, txOne } from '#db/sql.ts';

const Instant = z.coerce.date().transform((at) => at.toISOString());
const Row = Lesson.extend({ publishedAt: Instant });

/** Whether the reader may open the case that a lesson or question comes from. */
const mine = (scope: PlantScope): Sql => (scope === 'all' ? raw('true') : sql`c.plant_id = any(${[...scope]}::uuid[])`);

const lessonColumns = (scope: PlantScope): Sql => sql`
  l.id, p.code as "plantCode", l.title, l.problem, l.root_cause as "rootCause", l.check_text as "check", l.cause::text,
  l.sub_cause as "subCause", l.published_at as "publishedAt",
  case when ${mine(scope)} then c.id end as "caseId", case when ${mine(scope)} then c.number end as "caseNumber"`;
const lessonTables = raw(
  'lesson l join eight_d_case c on c.id = l.case_id join plant p on p.id = l.plant_id where l.withdrawn_at is null',
);

/** Words as PostgreSQL's text search takes them. */
const lexemes = (text: string): string[] =>
  [...new Set(text.toLowerCase().match(/[\p{L}\p{N}]{3,}/gu) ?? [])].slice(0, 40);

export async function listRows(db: Database, scope: PlantScope, query: NonNullable<Output<typeof listLessons.query>>) {
  const after = decodeCursor(query.cursor, z.tuple([z.uuid()]));
  const words = query.q ? lexemes(query.q) : [];
  const conditions = [
    ...(words.length
      ? [sql`and l.search @@ to_tsquery('simple', ${words.map((word) => `${word}:*`).join(' & ')})`]
      : []),
    ...(query.q && words.length === 0 ? [raw('and false')] : []),
    ...(query.cause?.length ? [sql`and l.cause = any(${query.cause}::cause[])`] : []),
    ...(after ? [sql`and l.id < ${after[0]}::uuid`] : []),
  ];
  const rows = await queryRows(
    db.pool,
    sql`select ${lessonColumns(scope)} from ${lessonTables} ${join(conditions, ' ')}
      order by l.id desc limit ${query.limit + 1}`,
    Row,
  );
  return toPage(rows, query.limit, (row) => [row.id]);
}

const Offered = Row.extend({ like: z.array(z.enum(likenesses)) });

/**
 * Lessons that have the part or the cause in common with the report, or most of its words; the part weighs three, cause and terminal
 * two, effect one, each shared word one up to three. Three points are needed, so that an effect alone offers nothing.
 */
export const offered = (db: Database, scope: PlantScope, query: NonNullable<Output<typeof offerLessons.query>>) => {
  const words = lexemes(query.text ?? '').filter((word) => word.length >= 4);
  const shared = sql`least(3, (select count(*)::int from unnest(${words}::text[]) w
    where l.search @@ to_tsquery('simple', w || ':*')))`;
  return queryRows(
    db.pool,
    sql`select ${lessonColumns(scope)}, array_remove(array[
        case when s.housing > 0 then 'housing' end, case when s.terminal > 0 then 'terminal' end,
        case when s.cause > 0 then 'cause' end, case when s.effect > 0 then 'effect' end,
        case when s.words >= 2 then 'words' end], null) as "like"
      from lesson l join eight_d_case c on c.id = l.case_id join plant p on p.id = l.plant_id
      cross join lateral (select
        case when ${query.housing ?? null}::uuid = any(l.housing_ids) then 3 else 0 end as housing,
        case when ${query.terminal ?? null}::uuid = any(l.terminal_ids) then 2 else 0 end as terminal,
        case when l.cause::text = ${query.cause ?? null}::text then 2 else 0 end as cause,
        case when ${query.effect ?? null}::text = any(l.effects) then 1 else 0 end as effect,
        ${shared} as words) s
      where l.withdrawn_at is null and s.housing + s.terminal + s.cause + s.effect + s.words >= 3
      order by s.housing + s.terminal + s.cause + s.effect + s.words desc, l.id desc limit 3`,
    Offered,
  );
};

const Asked = AskedReadAcross.extend({ askedAt: Instant, answeredAt: Instant.nullable() });
const askedSql = (conditions: readonly Sql[], limit: Sql): Sql => sql`
  select r.id, r.plant_id as "plantId", p.code as "plantCode", o.code as "fromPlantCode", r.why, r.title, r.problem,
    r.root_cause as "rootCause", r.check_text as "check", r.asked_at as "askedAt", r.answer::text,
    r.answer_text as "answerText", r.answered_at as "answeredAt", r.answered_by as "answeredBy",
    r.action_id as "actionId", r.version
  from read_across r join plant p on p.id = r.plant_id
  join eight_d_case c on c.id = r.case_id join plant o on o.id = c.plant_id
  where r.withdrawn_at is null and ${join(conditions, ' and ')} order by r.id desc ${limit}`;

export async function listAsked(
  db: Database,
  scope: PlantScope,
  query: NonNullable<Output<typeof listReadAcross.query>>,
) {
  const after = decodeCursor(query.cursor, z.tuple([z.uuid()]));
  const conditions = [
    sql`true`,
    ...(scope === 'all' ? [] : [sql`r.plant_id = any(${[...scope]}::uuid[])`]),
    ...(query.open === undefined ? [] : [query.open ? raw('r.answer is null') : raw('r.answer is not null')]),
    ...(after ? [sql`r.id < ${after[0]}::uuid`] : []),
  ];
  const rows = await queryRows(db.pool, askedSql(conditions, sql`limit ${query.limit + 1}`), Asked);
  return toPage(rows, query.limit, (row) => [row.id]);
}

export const findAsked = (tx: Tx, id: string) => txOne(tx, askedSql([sql`r.id = ${id}::uuid`], empty), Asked);
