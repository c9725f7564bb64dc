/** Rows of a staged production file against the production there is. */
import { execute, raw, sql } from '#db/sql.ts';
import type { Client, Doer } from './imports.queries.ts';

const none = raw(`'00000000-0000-0000-0000-000000000000'::uuid`);
const most = 100_000_000;

/**
 * `import_verdict`: one row for each day, line, housing and terminal of the file, standing for `rows` of its rows, which are
 * added up or, where several are to be refused, refused together.
 */
export async function judgeProduction(client: Client, sameKey: 'add_up' | 'refuse'): Promise<void> {
  await execute(
    client,
    sql`create temp table import_verdict as
      with keyed as (
        select r.plant_id, r.day, r.line_id, r.housing_id, r.terminal_id, min(r.line) as line, count(*)::int as rows, sum(r.units) as units, sum(r.terminals) as terminals,
          ${sameKey}::text = 'refuse' and count(*) > 1 as repeated
        from import_row r
        group by r.plant_id, r.day, r.line_id, r.housing_id, r.terminal_id
      ), present as materialized (
        select p.* from production p where p.day between (select min(day) from import_row) and (select max(day) from import_row)
          and p.plant_id in (select distinct plant_id from import_row)
      ), judged as (
        select k.*, p.id as production_id, case
          when k.repeated then 'repeated_key'
          when greatest(k.units, k.terminals) > ${most} then 'too_large'
          when p.id is null then 'add'
          when p.units = k.units and p.terminals = k.terminals then 'skip'
          else 'change' end as what
        from keyed k left join present p on p.plant_id = k.plant_id and p.day = k.day and coalesce(p.line_id, ${none}) = coalesce(k.line_id, ${none})
          and coalesce(p.housing_id, ${none}) = coalesce(k.housing_id, ${none}) and coalesce(p.terminal_id, ${none}) = coalesce(k.terminal_id, ${none})
      )
      select line, rows, plant_id, production_id, day, line_id, housing_id, terminal_id, units, terminals,
        case when what in ('add', 'change', 'skip') then what else 'refuse' end as verdict,
        case when what not in ('add', 'change', 'skip') then what end as reason, day::text as value, case when rows > 1 then rows::text end as note
      from judged`,
  );
}

/** How many rows of the file share their key with another one. */
export async function countRepeatedKeys(client: Client): Promise<number> {
  const { rows } = await client.query<{ rows: number }>(
    `select coalesce(sum(n), 0)::int as rows from (select count(*) as n from import_row group by plant_id, day, line_id, housing_id, terminal_id having count(*) > 1) k`,
  );
  return rows[0]!.rows;
}

export async function writeProduction(client: Client, { importId, at, actorId, actor }: Doer): Promise<void> {
  await execute(
    client,
    sql`insert into production (id, plant_id, day, line_id, housing_id, terminal_id, units, terminals, import_id, import_line)
      select uuidv7(), v.plant_id, v.day, v.line_id, v.housing_id, v.terminal_id, v.units, v.terminals, ${importId}::uuid, v.line
      from import_verdict v where v.verdict = 'add' order by v.day, v.line`,
  );
  await execute(
    client,
    sql`with changed as (
        update production p set units = v.units, terminals = v.terminals, import_id = ${importId}::uuid, import_line = v.line, version = p.version + 1
        from import_verdict v where v.verdict = 'change' and p.id = v.production_id and p.plant_id = v.plant_id
        returning p.id, p.plant_id, p.day, old.units as units_was, old.terminals as terminals_was, new.units, new.terminals
      )
      insert into audit_entry (id, at, actor_id, actor, action, entity, entity_id, label, plant_id, before, after)
      select uuidv7(), ${at}::timestamptz, ${actorId}::uuid, ${actor}, 'imported', 'production', c.id::text, p.code || ' ' || c.day, c.plant_id,
        jsonb_build_object('units', c.units_was, 'terminals', c.terminals_was), jsonb_build_object('units', c.units, 'terminals', c.terminals)
      from changed c join plant p on p.id = c.plant_id`,
  );
}
