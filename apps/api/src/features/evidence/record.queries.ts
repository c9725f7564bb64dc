import { z } from 'zod';
import type { PlantScope } from '#api/platform/actor.ts';
import { Cause } from '#contracts/taxonomy.ts';
import { empty, type Sql, sql } from '#db/sql.ts';

export const JudgedCase = z.object({
  plantId: z.string(),
  plantCode: z.string(),
  cause: Cause,
  suggested: Cause,
  frequent: Cause,
  probabilities: z.array(z.number()),
  base: z.array(z.number()),
});
export type JudgedCase = z.output<typeof JudgedCase>;

export interface Period {
  from?: string | undefined;
  to?: string | undefined;
}

/** Live decisions for which somebody had taken a finding. */
const judged = (scope: PlantScope, { from, to }: Period): Sql => sql`
  c.superseded_at is null and c.taken > 0 and c.cause <> 'undetermined'
    ${scope === 'all' ? empty : sql`and c.plant_id = any(${scope}::uuid[])`}
    ${from ? sql`and c.at >= ${from}::date` : empty} ${to ? sql`and c.at < ${to}::date` : empty}`;

/** Judged cases, each with what was said before it was learned from. */
export const judgedCasesSql = (scope: PlantScope, period: Period): Sql => sql`
  select c.plant_id as "plantId", p.code as "plantCode", c.cause, c.suggested, c.frequent, c.probabilities, c.base
  from confirmation c join plant p on p.id = c.plant_id where ${judged(scope, period)}`;

export const ListedCase = z.object({
  failureId: z.string(),
  number: z.string(),
  plantCode: z.string(),
  suggested: Cause,
  confirmed: Cause,
  probabilities: z.array(z.number()),
  at: z.coerce.date().transform((at) => at.toISOString()),
});
export const listedCasesSql = (
  scope: PlantScope,
  period: Period,
  { suggested, confirmed }: { suggested?: Cause | undefined; confirmed?: Cause | undefined },
): Sql => sql`
  select c.failure_id as "failureId", f.number, p.code as "plantCode", c.suggested, c.cause as confirmed, c.probabilities, c.at
  from confirmation c join plant p on p.id = c.plant_id join failure f on f.plant_id = c.plant_id and f.id = c.failure_id
  where ${judged(scope, period)} ${suggested ? sql`and c.suggested = ${suggested}::cause` : empty}
    ${confirmed ? sql`and c.cause = ${confirmed}::cause` : empty}
  order by c.id desc limit 200`;

export const OpinionPair = z.object({ first: Cause, second: Cause, suggested: Cause });
export const opinionPairsSql = (scope: PlantScope): Sql => sql`
  select o.first_cause as first, o.cause as second, c.suggested from opinion o
  join confirmation c on c.plant_id = o.plant_id and c.id = o.confirmation_id
  where o.given_at is not null ${scope === 'all' ? empty : sql`and o.plant_id = any(${scope}::uuid[])`}`;

export const StandingRow = z.object({
  cases: z.int(),
  hits: z.int(),
  frequentHits: z.int(),
  onlySuggestion: z.int(),
  onlyFrequent: z.int(),
});
/** Whether the suggestion beats the most frequent cause, from the latest decisions of the group. */
export const standingSql = (limit: number): Sql => sql`
  select count(*)::int as cases, count(*) filter (where c.suggested = c.cause)::int as hits, count(*) filter (where c.frequent = c.cause)::int as "frequentHits",
    count(*) filter (where c.suggested = c.cause and c.frequent <> c.cause)::int as "onlySuggestion",
    count(*) filter (where c.suggested <> c.cause and c.frequent = c.cause)::int as "onlyFrequent"
  from (select suggested, cause, frequent from confirmation where superseded_at is null and taken > 0 and cause <> 'undetermined' order by id desc limit ${limit}) c`;
