/** Findings of a staged file against those that the reports have. */
import { execute, sql } from '#db/sql.ts';
import type { Client, Doer } from './imports.queries.ts';

/**
 * `import_finding`: one row for each finding that the file states and that is not so yet. `import_verdict`: one row for each row of
 * the file. A report is known by its number, else by the sender's reference; what the file repeats is taken once.
 */
export async function judgeFindings(client: Client): Promise<void> {
  await execute(
    client,
    sql`create temp table import_stated as
      select r.line, r.plant_id, f.id as failure_id, f.voided_at is not null as voided, r.report, g.code, g.answer, g.value, g.limit_value, g.unit,
        row_number() over same as nth, first_value(md5(g::text)) over same <> md5(g::text) as contradicts,
        h.code is not null as had,
        h.code is null or (h.answer, h.value, h.limit_value, h.unit) is distinct from (g.answer, g.value, g.limit_value, g.unit) as news
      from import_row r
      left join lateral (select f.id, f.voided_at from failure f where f.plant_id = r.plant_id and (f.number = r.report or f.external_ref = r.report)
        order by f.number = r.report desc limit 1) f on true
      cross join lateral (select s.code, s.answer, round(s.value, 4) as value, round(s."limitValue", 4) as limit_value, s.unit
        from jsonb_to_recordset(r.findings) as s (code text, answer finding_answer, value numeric, "limitValue" numeric, unit text)) g
      left join finding h on h.plant_id = r.plant_id and h.failure_id = f.id and h.code = g.code
      window same as (partition by r.plant_id, f.id, g.code order by r.line)`,
  );
  await execute(
    client,
    sql`create temp table import_verdict as
      select s.line, 1 as rows, s.plant_id, s.report as value, case when bool_or(s.contradicts) then min(s.code) filter (where s.contradicts) end as note,
        case when min(s.reason) is not null then 'refuse' when bool_or(s.fresh and s.had) then 'change' when bool_or(s.fresh) then 'add' else 'skip' end as verdict,
        min(s.reason) as reason
      from (select t.*, t.news and t.nth = 1 as fresh,
          case when t.failure_id is null then 'unknown_report' when t.voided then 'voided_report' when t.contradicts then 'repeated_finding' end as reason
        from import_stated t) s
      group by s.line, s.plant_id, s.report`,
  );
}

/** Takes the findings, and audits each report once with what it had been and became. */
export async function writeFindings(client: Client, { importId, at, actorId, actor }: Doer): Promise<void> {
  await execute(
    client,
    sql`with taken as (
        insert into finding as o (id, plant_id, failure_id, code, answer, value, limit_value, unit, import_id, taken_by, taken_at)
        select uuidv7(), s.plant_id, s.failure_id, s.code, s.answer, s.value, s.limit_value, s.unit, ${importId}::uuid, ${actor}, ${at}::timestamptz
        from import_stated s join import_verdict v on v.line = s.line and v.verdict in ('add', 'change') where s.news and s.nth = 1
        on conflict (plant_id, failure_id, code) do update set answer = excluded.answer, value = excluded.value, limit_value = excluded.limit_value,
          unit = excluded.unit, note = null, import_id = excluded.import_id, taken_by = excluded.taken_by, taken_at = excluded.taken_at
        returning plant_id, failure_id, code, coalesce(old.value::text, old.answer::text) as was, coalesce(new.value::text, new.answer::text) as is
      )
      insert into audit_entry (id, at, actor_id, actor, action, entity, entity_id, label, plant_id, before, after)
      select uuidv7(), ${at}::timestamptz, ${actorId}::uuid, ${actor}, 'findings taken', 'failure', f.id::text, f.number, f.plant_id,
        jsonb_object_agg(t.code, t.was) filter (where t.was is not null), jsonb_object_agg(t.code, t.is)
      from taken t join failure f on f.plant_id = t.plant_id and f.id = t.failure_id
      group by f.id, f.number, f.plant_id`,
  );
}
