/** Rows of a staged file against the reports there are: what each row does, and doing it. */
import { execute, raw, sql } from '#db/sql.ts';
import type { Client, Doer } from './imports.queries.ts';

const sorted = raw('(r.cause is not null or r.origin is not null)');

/**
 * `import_verdict`: one row for each row of the file, and the report it adds or changes. A row is known by the sender's
 * reference, else by its own text; the n-th equal row of a file is another failure, so that a repeated file adds nothing.
 */
export async function judgeFailures(client: Client): Promise<void> {
  await execute(
    client,
    sql`create temp table import_verdict as
      with ranked as (
        select r.line, r.plant_id, r.external_ref, r.row_key, r.content, r.found, r.found_on, r.built_on, r.origin, r.quantity_found, r.quantity_inspected,
          row_number() over same as nth, first_value(r.content) over same as first_content, first_value(r.line) over same as first_line
        from import_row r window same as (partition by r.plant_id, r.external_ref, r.row_key order by r.line)
      ), keyed as (
        select ranked.*, case when nth = 1 then row_key else md5(row_key::text || ' ' || nth)::uuid end as import_key from ranked
      ), met as (
        select k.*, coalesce(a.id, b.id) as failure_id, coalesce(a.import_hash, b.import_hash) as import_hash,
          a.voided_at is not null or b.voided_at is not null as voided,
          coalesce(k.origin, a.origin, b.origin) > k.found as late_origin,
          coalesce(k.built_on, a.built_on, b.built_on) > k.found_on as late_build,
          coalesce(k.quantity_inspected, a.quantity_inspected, b.quantity_inspected) < k.quantity_found as few_inspected
        from keyed k
        left join failure a on a.plant_id = k.plant_id and a.external_ref = k.external_ref
        left join failure b on b.plant_id = k.plant_id and b.import_key = k.import_key
      ), judged as (
        select met.*, case
          when external_ref is not null and nth > 1 then case when content = first_content then 'skip' else 'repeated_reference' end
          when failure_id is null then 'add'
          when import_hash = content then 'skip'
          when voided then 'voided_report'
          when late_origin then 'origin_after_found'
          when late_build then 'built_after_found'
          when few_inspected then 'found_above_inspected'
          else 'change' end as what
        from met
      )
      select line, 1 as rows, plant_id, coalesce(failure_id, uuidv7()) as failure_id, import_key, found_on,
        case when what in ('add', 'change', 'skip') then what else 'refuse' end as verdict,
        case when what not in ('add', 'change', 'skip') then what end as reason,
        external_ref as value, case when what = 'repeated_reference' then first_line::text end as note
      from judged`,
  );
  await execute(client, sql`create index on import_verdict (line)`);
  await execute(client, sql`analyze import_verdict`);
}

/** Running numbers for the new reports, plant by plant and year by year, in one step. */
const takeNumbers = sql`
  create temp table import_number as
  with wanted as (select plant_id, extract(year from found_on)::int as year, count(*)::int as reports from import_verdict where verdict = 'add' group by 1, 2),
  taken as (
    insert into report_counter as c (plant_id, year, last) select plant_id, year, reports from wanted order by plant_id, year
    on conflict (plant_id, year) do update set last = c.last + excluded.last returning c.plant_id, c.year, c.last)
  select t.plant_id, t.year, t.last - w.reports as before from taken t join wanted w using (plant_id, year)`;

/** Adds the new reports with the figures that the view `failure_figures` would give them. */
export async function addFailures(client: Client, { importId, at, actorId }: Doer): Promise<number> {
  await execute(client, takeNumbers);
  return execute(
    client,
    sql`with first_gate as materialized (
        select s.plant_id, o.origin, g.cause, min(s.common) as gate
        from cause_gate g cross join generate_series(1, 10) as o (origin) join stage s on s.retired_at is null and s.common >= greatest(o.origin, g.visible_from)
        where g.visible_from is not null group by 1, 2, 3
      ), passed as materialized (
        select p.id as plant_id, o.origin, f.found, (select count(distinct s.common) from stage s
          where s.plant_id = p.id and s.retired_at is null and s.common > o.origin and s.common < f.found) as gates
        from plant p cross join generate_series(1, 10) as o (origin) cross join generate_series(1, 10) as f (found)
      ), cost as materialized (select * from standard_cost_period)
      insert into failure (id, plant_id, number, external_ref, reported_at, reported_by, found_on, found_at, built_on, line_id, station, shift, stage_id, found,
        source, housing_id, terminal_id, wire_id, tool_id, other_tool_ids, fixture_position, cavities, reel_lot, housing_lot, serial_from, serial_to, customer_id,
        customer_ref, effect, quantity_found, quantity_inspected, lock_state, disposition, safety, note, cause, sub_cause, origin, proof, sorted_at, sorted_by,
        cost_items, booked_minor, estimated_minor, standard_minor, gate, gate_minor, gates_passed, import_id, import_line, import_key, import_hash)
      select v.failure_id, r.plant_id,
        p.code || '-' || to_char(r.found_on, 'YY') || '-' || lpad(v.running::text, greatest(5, length(v.running::text)), '0'),
        r.external_ref, ${at}::timestamptz, ${actorId}::uuid, r.found_on, coalesce(r.found_instant, r.found_local at time zone p.zone), r.built_on, r.line_id,
        r.station, r.shift, r.stage_id, r.found, r.source, r.housing_id, r.terminal_id, r.wire_id, r.tool_id, r.other_tool_ids, r.fixture_position, r.cavities,
        r.reel_lot, r.housing_lot, r.serial_from, r.serial_to, r.customer_id, r.customer_ref, r.effect, r.quantity_found, r.quantity_inspected,
        coalesce(r.lock_state, 'unknown'), coalesce(r.disposition, 'pending'), coalesce(r.safety_stated, false) or r.safety_by_housing, r.note, r.cause,
        r.sub_cause, r.origin, r.proof, case when ${sorted} then ${at}::timestamptz end,
        case when ${sorted} then ${actorId}::uuid end,
        cardinality(r.cost_categories), case when r.cost_basis = 'booked' then t.total else 0 end, case when r.cost_basis = 'estimated' then t.total else 0 end,
        here.terminal_minor * r.quantity_found, fg.gate, there.terminal_minor * r.quantity_found, pg.gates,
        ${importId}::uuid, r.line, v.import_key, r.content
      from (select a.*, m.before + row_number() over (partition by a.plant_id, m.year order by a.line) as running
          from import_verdict a join import_number m on m.plant_id = a.plant_id and m.year = extract(year from a.found_on)::int where a.verdict = 'add') v
      join import_row r on r.line = v.line
      join plant p on p.id = r.plant_id
      cross join lateral (select coalesce(sum(x), 0) as total from unnest(r.cost_plant_minor) x) t
      left join first_gate fg on fg.plant_id = r.plant_id and fg.origin = r.origin and fg.cause = r.cause
      left join passed pg on pg.plant_id = r.plant_id and pg.origin = r.origin and pg.found = r.found
      left join cost here on here.plant_id = r.plant_id and here.stage = r.found and here.disposition = coalesce(r.disposition, 'pending')
        and here.valid_from <= r.found_on and (here.valid_to is null or r.found_on < here.valid_to)
      left join cost there on there.plant_id = r.plant_id and there.stage = fg.gate
        and there.disposition = case when r.disposition = 'scrapped' then 'scrapped'::disposition else 'reworked'::disposition end
        and there.valid_from <= r.found_on and (there.valid_to is null or r.found_on < there.valid_to)
      order by r.line`,
  );
}

/**
 * Changes the reports whose sender has changed his row. A blank cell leaves what the report says. Each report's change is
 * audited with what it was and what it became.
 */
export const changeFailures = (client: Client, { importId, at, actorId, actor }: Doer): Promise<number> =>
  execute(
    client,
    sql`with changed as (
        update failure f set found_on = r.found_on,
          found_at = coalesce(r.found_instant, r.found_local at time zone p.zone, case when f.found_on = r.found_on then f.found_at end),
          built_on = coalesce(r.built_on, f.built_on), line_id = coalesce(r.line_id, f.line_id), station = coalesce(r.station, f.station),
          shift = coalesce(r.shift, f.shift), stage_id = r.stage_id, found = r.found, source = r.source, housing_id = coalesce(r.housing_id, f.housing_id),
          terminal_id = coalesce(r.terminal_id, f.terminal_id), wire_id = coalesce(r.wire_id, f.wire_id), tool_id = coalesce(r.tool_id, f.tool_id),
          other_tool_ids = case when r.tool_id is null then f.other_tool_ids else r.other_tool_ids end,
          fixture_position = coalesce(r.fixture_position, f.fixture_position),
          cavities = case when cardinality(r.cavities) = 0 then f.cavities else r.cavities end, reel_lot = coalesce(r.reel_lot, f.reel_lot),
          housing_lot = coalesce(r.housing_lot, f.housing_lot), serial_from = coalesce(r.serial_from, f.serial_from), serial_to = coalesce(r.serial_to, f.serial_to),
          customer_id = coalesce(r.customer_id, f.customer_id), customer_ref = coalesce(r.customer_ref, f.customer_ref), effect = coalesce(r.effect, f.effect),
          quantity_found = r.quantity_found, quantity_inspected = coalesce(r.quantity_inspected, f.quantity_inspected),
          lock_state = coalesce(r.lock_state, f.lock_state), disposition = coalesce(r.disposition, f.disposition),
          safety = coalesce(r.safety_stated, f.safety) or r.safety_by_housing, note = coalesce(r.note, f.note), cause = coalesce(r.cause, f.cause),
          sub_cause = case when r.cause is null then f.sub_cause when r.cause = f.cause then coalesce(r.sub_cause, f.sub_cause) else r.sub_cause end,
          origin = coalesce(r.origin, f.origin), proof = coalesce(r.proof, f.proof),
          sorted_at = case when ${sorted} then ${at}::timestamptz else f.sorted_at end, sorted_by = case when ${sorted} then ${actorId}::uuid else f.sorted_by end,
          import_id = ${importId}::uuid, import_line = r.line, import_hash = r.content, version = f.version + 1
        from import_row r join import_verdict v on v.line = r.line and v.verdict = 'change' join plant p on p.id = r.plant_id
        where f.id = v.failure_id and f.plant_id = v.plant_id
        returning f.id, f.plant_id, f.number, to_jsonb(old) - 'search' as was, to_jsonb(new) - 'search' as is
      )
      insert into audit_entry (id, at, actor_id, actor, action, entity, entity_id, label, plant_id, before, after)
      select uuidv7(), ${at}::timestamptz, ${actorId}::uuid, ${actor}, 'imported', 'failure', c.id::text, c.number, c.plant_id, d.was, d.is
      from changed c cross join lateral (
        select jsonb_object_agg(w.key, w.value) as was, jsonb_object_agg(w.key, c.is -> w.key) as is
        from jsonb_each(c.was) w where w.value is distinct from c.is -> w.key) d`,
  );

/** The reports that the file changes. */
export const changedReports = sql`select v.plant_id, v.failure_id from import_verdict v where v.verdict = 'change'`;

/** Keeps the cause that each new or changed report was given, where it differs from the last one kept. */
export const keepCauses = (client: Client, { at, actor, personId }: Doer): Promise<number> =>
  execute(
    client,
    sql`insert into cause_change (id, plant_id, failure_id, at, person_id, actor, cause, sub_cause, origin, proof)
      select uuidv7(), f.plant_id, f.id, ${at}::timestamptz, ${personId}::uuid, ${actor}, f.cause, f.sub_cause, f.origin, f.proof
      from import_verdict v join import_row r on r.line = v.line join failure f on f.id = v.failure_id and f.plant_id = v.plant_id
      left join lateral (select c.cause, c.sub_cause, c.origin from cause_change c
        where c.plant_id = v.plant_id and c.failure_id = v.failure_id and v.verdict = 'change' order by c.id desc limit 1) last on true
      where v.verdict in ('add', 'change') and ${sorted} and (last.cause, last.sub_cause, last.origin) is distinct from (f.cause, f.sub_cause, f.origin)`,
  );

/** Cost items of the rows. An item's id is a name-based UUID (RFC 9562, version 3) of report, category and basis, so that a changed amount replaces the old one. */
export async function writeCosts(client: Client): Promise<void> {
  await execute(
    client,
    sql`insert into cost_item (id, plant_id, failure_id, category, basis, incurred_on, amount_minor, currency, plant_minor, rate_on)
      select overlay(overlay(md5(v.failure_id::text || i.category || r.cost_basis) placing '3' from 13) placing '8' from 17)::uuid, v.plant_id, v.failure_id, i.category, r.cost_basis, r.found_on, i.minor,
        r.cost_currency, i.plant_minor, r.cost_rate_on
      from import_verdict v join import_row r on r.line = v.line
      cross join lateral unnest(r.cost_categories, r.cost_minor, r.cost_plant_minor) as i (category, minor, plant_minor)
      where v.verdict in ('add', 'change') and cardinality(r.cost_categories) > 0
      on conflict (id, plant_id) do update set incurred_on = excluded.incurred_on, amount_minor = excluded.amount_minor, currency = excluded.currency,
        plant_minor = excluded.plant_minor, rate_on = excluded.rate_on, removed_at = null`,
  );
  await execute(
    client,
    sql`update failure f set cost_items = c.items, booked_minor = c.booked, estimated_minor = c.estimated
      from import_verdict v cross join lateral (
        select count(*)::int as items, coalesce(sum(i.plant_minor) filter (where i.basis = 'booked'), 0) as booked,
          coalesce(sum(i.plant_minor) filter (where i.basis = 'estimated'), 0) as estimated
        from cost_item i where i.plant_id = v.plant_id and i.failure_id = v.failure_id and i.removed_at is null) c
      where v.verdict = 'change' and f.id = v.failure_id and f.plant_id = v.plant_id`,
  );
}

/** Findings of the rows; one that the file names again takes the place of the older answer, and is audited where the report was there. */
export const writeFindings = (client: Client, { importId, at, actorId, actor }: Doer): Promise<number> =>
  execute(
    client,
    sql`with taken as (
        insert into finding (id, plant_id, failure_id, code, answer, value, limit_value, unit, import_id, taken_by, taken_at)
        select uuidv7(), v.plant_id, v.failure_id, g.code, g.answer, g.value, g."limitValue", g.unit, ${importId}::uuid, ${actor}, ${at}::timestamptz
        from import_verdict v join import_row r on r.line = v.line
        cross join lateral jsonb_to_recordset(r.findings) as g (code text, answer finding_answer, value numeric, "limitValue" numeric, unit text)
        where v.verdict in ('add', 'change')
        on conflict (plant_id, failure_id, code) do update set answer = excluded.answer, value = excluded.value, limit_value = excluded.limit_value,
          unit = excluded.unit, note = null, import_id = excluded.import_id, taken_by = excluded.taken_by, taken_at = excluded.taken_at
        returning plant_id, failure_id, code, answer
      )
      insert into audit_entry (id, at, actor_id, actor, action, entity, entity_id, label, plant_id, after)
      select uuidv7(), ${at}::timestamptz, ${actorId}::uuid, ${actor}, 'findings taken', 'failure', f.id::text, f.number, f.plant_id,
        jsonb_object_agg(t.code, t.answer)
      from taken t join import_verdict v on v.failure_id = t.failure_id and v.verdict = 'change' join failure f on f.id = t.failure_id and f.plant_id = t.plant_id
      group by f.id, f.number, f.plant_id`,
  );

/** Derived figures of the changed reports. */
export const refreshChanged = (client: Client): Promise<number> =>
  execute(
    client,
    sql`update failure f set standard_minor = g.standard_minor, gate = g.gate, gate_minor = g.gate_minor, gates_passed = g.gates_passed
      from import_verdict v join failure_figures g on g.id = v.failure_id and g.plant_id = v.plant_id
      where v.verdict = 'change' and f.id = v.failure_id and f.plant_id = v.plant_id`,
  );
