/** The suggestion for one report where 100,000 confirmed cases were learned from. */
import type pg from 'pg';
import { milliseconds, type Spread, spread } from './measure.ts';

export const confirmedCases = 100_000;

/** Confirmed cases with answers at random: what matters here is how many there are, not what they say. */
const confirm = `
  insert into confirmation (id, plant_id, failure_id, housing_id, at, actor, cause, suggested, frequent, answers, taken, probabilities, base,
    temperature, model_version)
  select uuidv7(), f.plant_id, f.id, f.housing_id, now(), 'Bench', f.cause, f.cause, 'tooling',
    (select jsonb_object_agg(code, case when random() < 0.4 then 'yes' else 'no' end) from unnest($1::text[]) code where f.id is not null),
    cardinality($1::text[]), array_fill(1 / 9.0, array[9]), array_fill(1 / 9.0, array[9]), 1, 0
  from (select * from failure where cause is not null and cause <> 'undetermined' and voided_at is null limit ${confirmedCases}) f
  on conflict do nothing`;

const answered = `create temp table told as
  select c.plant_id, c.id, c.cause, a.key as code, a.value = 'yes' as yes from confirmation c cross join jsonb_each_text(c.answers) a`;
const learn = [
  `insert into learned_version (plant_id, version, cases) select plant_id, count(*), count(*) from confirmation group by 1
    on conflict (plant_id) do update set version = excluded.version, cases = excluded.cases`,
  `insert into learned_answer (plant_id, code, cause, yes, no)
    select plant_id, code, cause, count(*) filter (where yes), count(*) filter (where not yes) from told group by 1, 2, 3 on conflict do nothing`,
  `insert into learned_pair (plant_id, first, second, cause, yes_yes, yes_no, no_yes, no_no)
    select a.plant_id, a.code, b.code, a.cause, count(*) filter (where a.yes and b.yes), count(*) filter (where a.yes and not b.yes),
      count(*) filter (where not a.yes and b.yes), count(*) filter (where not a.yes and not b.yes)
    from told a join told b on b.id = a.id and b.code > a.code group by 1, 2, 3, 4 on conflict do nothing`,
];
const codes = [
  'lance_flat',
  'lance_intact',
  'witness_mark',
  'probe_mark',
  'contact_opened',
  'latch_whitened',
  'side_load',
  'residue',
];

export async function learnCases(client: pg.Client): Promise<number> {
  await client.query(confirm, [codes]);
  await client.query(answered);
  for (const statement of learn) await client.query(statement);
  await client.query('analyze');
  const { rows } = await client.query<{ cases: number }>('select sum(cases)::int as cases from learned_version');
  return rows[0]!.cases;
}

/** The whole request for one report, and beside it the same report without its evidence; each answer once, in turn. */
export async function measureSuggestion(
  ask: (path: string) => Promise<unknown>,
  reports: readonly string[],
): Promise<{ evidence: Spread; report: Spread }> {
  const times = { evidence: [] as number[], report: [] as number[] };
  for (const [place, id] of reports.entries()) {
    const evidence = await milliseconds(() => ask(`/api/v1/failures/${id}/evidence`));
    const report = await milliseconds(() => ask(`/api/v1/failures/${id}`));
    if (place < 20) continue;
    times.evidence.push(evidence);
    times.report.push(report);
  }
  return { evidence: spread(times.evidence), report: spread(times.report) };
}
