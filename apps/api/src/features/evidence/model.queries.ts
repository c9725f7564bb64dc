import { z } from 'zod';
import { Cause } from '#contracts/taxonomy.ts';
import { type Sql, sql } from '#db/sql.ts';

export const VersionRow = z.object({ version: z.int(), state: z.string(), cases: z.int(), plantCases: z.int() });
/** `version` grows with every case learned or unlearned anywhere; `state` also tells apart what a refused write would have learned. */
export const versionSql = (plantId: string): Sql => sql`
  select coalesce(sum(v.version), 0)::int as version,
    coalesce(string_agg(v.plant_id::text || v.version || '.' || v.xmin::text, ' ' order by v.plant_id), '') as state, coalesce(sum(v.cases), 0)::int as cases,
    coalesce(sum(v.cases) filter (where v.plant_id = ${plantId}::uuid), 0)::int as "plantCases" from learned_version v`;

export const AnswerRow = z.object({ code: z.string(), cause: Cause, own: z.boolean(), yes: z.int(), no: z.int() });
/** Answers in confirmed cases, of the plant itself and of all others together. */
export const answersSql = (plantId: string): Sql => sql`
  select a.code, a.cause, a.plant_id = ${plantId}::uuid as own, sum(a.yes)::int as yes, sum(a.no)::int as no
  from learned_answer a group by 1, 2, 3`;

export const PairRow = z.object({ first: z.string(), cause: Cause, counts: z.array(z.int()).length(4) });
export const pairsSql: Sql = sql`
  select p.first, p.cause, array[sum(p.yes_yes), sum(p.yes_no), sum(p.no_yes), sum(p.no_no)]::int[] as counts
  from learned_pair p group by p.first, p.second, p.cause`;

export const TallyRow = z.object({ cause: Cause, others: z.int(), plant: z.int(), part: z.int() });
/** Decided causes: of the other plants, of the plant with other parts, and of the part in the plant. */
export const tallySql = (plantId: string, housingId: string | null): Sql => sql`
  select t.cause, coalesce(sum(t.reports) filter (where t.plant_id <> ${plantId}::uuid), 0)::int as others,
    (coalesce(sum(t.reports) filter (where t.plant_id = ${plantId}::uuid), 0) - coalesce(max(p.reports), 0))::int as plant,
    coalesce(max(p.reports), 0)::int as part
  from cause_total t
  left join cause_tally p on p.plant_id = ${plantId}::uuid and p.housing_id = ${housingId}::uuid and p.cause = t.cause
  where t.cause <> 'undetermined' group by t.cause`;

export const JudgedRow = z.object({
  cause: Cause,
  probabilities: z.array(z.number()),
  base: z.array(z.number()),
  temperature: z.number(),
});
/** The latest decisions with what had been said before them. */
export const judgedSql = (limit: number): Sql => sql`
  select c.cause, c.probabilities, c.base, c.temperature from confirmation c
  where c.superseded_at is null and c.taken > 0 and c.cause <> 'undetermined' order by c.id desc limit ${limit}`;
