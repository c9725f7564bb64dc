import { z } from 'zod';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import { filterWhere } from '#api/platform/filter.ts';
import { queryRows, sql } from '#db/sql.ts';

const FieldOrigin = z.object({
  origin: z.number().nullable(),
  built: z.number(),
  dated: z.number(),
  undated: z.number(),
});
export type FieldOrigin = z.infer<typeof FieldOrigin>;

/** Field reports found before `until`, per origin: of what was built in the period; and since it began, with and without a build day. */
export function fieldByOrigin({ db, scope, filter, period }: Asked, until: string): Promise<FieldOrigin[]> {
  const { from, ...asked } = filter;
  return queryRows(
    db.pool,
    sql`select f.origin, count(*) filter (where f.built_on >= ${period.from}::date and f.built_on < ${period.to}::date)::int as built,
        count(*) filter (where f.built_on is not null and f.found_on >= ${period.from}::date)::int as dated,
        count(*) filter (where f.built_on is null and f.found_on >= ${period.from}::date)::int as undated
      from failure_fact f where ${filterWhere({ ...asked, to: until }, scope)} and f.found = 10 group by f.origin`,
    FieldOrigin,
  );
}

const StageStandard = z.object({ plant_id: z.string(), stage: z.number(), minor: z.number() });
export type StageStandard = z.infer<typeof StageStandard>;

/** What reworking one terminal costs by standard at the end of the period, per plant and stage. */
export const standardCosts = ({ db, plants, period }: Asked): Promise<StageStandard[]> =>
  queryRows(
    db.pool,
    sql`select s.plant_id, s.stage, s.terminal_minor as minor from standard_cost_period s
      where s.plant_id = any(${plants.map(({ id }) => id)}::uuid[]) and s.disposition = 'reworked'
        and s.valid_from < ${period.to}::date and (s.valid_to is null or s.valid_to >= ${period.to}::date)`,
    StageStandard,
  );
