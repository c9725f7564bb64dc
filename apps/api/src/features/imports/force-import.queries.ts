/** Values of a staged file as force samples, against the samples there are. */
import { execute, sql } from '#db/sql.ts';
import type { Client, Doer } from './imports.queries.ts';

const mostValues = 1000;

/**
 * `import_verdict`: one row for each sample of the file, standing for `rows` of its rows: those that agree in plant, kind, day, parts,
 * tool and reference. A sample that is there with other values is replaced as a whole.
 */
export async function judgeForce(client: Client): Promise<void> {
  await execute(
    client,
    sql`create temp table import_verdict as
      with sample as (
        select r.plant_id, r.kind, r.day, r.terminal_id, r.tool_id, r.housing_id, r.wire_id, r.reference, min(r.line) as line, count(*)::int as rows,
          min(r.unit) as unit, min(r.minimum_n) as minimum_n, array_agg(r.entered order by r.line) as entered, array_agg(r.newtons order by r.line) as newtons,
          min(r.unit) <> max(r.unit) or count(distinct r.minimum_n) > 1 as mixed
        from import_row r group by r.plant_id, r.kind, r.day, r.terminal_id, r.tool_id, r.housing_id, r.wire_id, r.reference
      ), judged as (
        select s.*, f.id as sample_id, case
          when s.mixed then 'sample_differs'
          when s.rows > ${mostValues} then 'too_many_values'
          when f.id is null then 'add'
          when (f.unit, f.entered, f.minimum_n) is not distinct from (s.unit, s.entered, s.minimum_n) then 'skip'
          else 'change' end as what
        from sample s left join force_sample f on f.voided_at is null and f.plant_id = s.plant_id and f.kind = s.kind and f.terminal_id = s.terminal_id
          and f.day = s.day and f.tool_id is not distinct from s.tool_id and f.housing_id is not distinct from s.housing_id
          and f.wire_id is not distinct from s.wire_id and f.reference is not distinct from s.reference
      )
      select j.*, case when j.what in ('add', 'change', 'skip') then j.what else 'refuse' end as verdict,
        case when j.what not in ('add', 'change', 'skip') then j.what end as reason, coalesce(j.reference, '') as value,
        case when j.rows > 1 then j.rows::text end as note
      from judged j`,
  );
}

export async function writeForce(client: Client, { importId, at, actorId, actor }: Doer): Promise<void> {
  await execute(
    client,
    sql`insert into force_sample (id, plant_id, kind, day, terminal_id, tool_id, housing_id, wire_id, reference, unit, entered, newtons, minimum_n,
        recorded_at, recorded_by, import_id)
      select uuidv7(), v.plant_id, v.kind, v.day, v.terminal_id, v.tool_id, v.housing_id, v.wire_id, v.reference, v.unit, v.entered, v.newtons, v.minimum_n,
        ${at}::timestamptz, ${actor}, ${importId}::uuid
      from import_verdict v where v.verdict = 'add' order by v.day, v.line`,
  );
  await execute(
    client,
    sql`with changed as (
        update force_sample f set unit = v.unit, entered = v.entered, newtons = v.newtons, minimum_n = v.minimum_n, import_id = ${importId}::uuid,
          version = f.version + 1
        from import_verdict v where v.verdict = 'change' and f.id = v.sample_id and f.plant_id = v.plant_id
        returning f.id, f.plant_id, f.terminal_id, f.day, old.unit as unit_was, old.entered as entered_was, old.minimum_n as minimum_was, new.unit,
          new.entered, new.minimum_n
      )
      insert into audit_entry (id, at, actor_id, actor, action, entity, entity_id, label, plant_id, before, after)
      select uuidv7(), ${at}::timestamptz, ${actorId}::uuid, ${actor}, 'imported', 'force_sample', c.id::text, t.code || ' ' || c.day, c.plant_id,
        jsonb_build_object('unit', c.unit_was, 'values', c.entered_was, 'minimumN', c.minimum_was),
        jsonb_build_object('unit', c.unit, 'values', c.entered, 'minimumN', c.minimum_n)
      from changed c join terminal t on t.id = c.terminal_id`,
  );
}
