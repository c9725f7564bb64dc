import { z } from 'zod';
import { addDays } from '#analysis/calendar/day.ts';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import { filterWhere } from '#api/platform/filter.ts';
import type { Filter } from '#contracts/shared/filter.ts';
import { queryRows, sql } from '#db/sql.ts';

const Event = z.object({ id: z.string(), number: z.string(), found_on: z.string() });

/** The reports themselves in order of time, up to one more than a chart of gaps takes. */
export const readEvents = ({ db, filter, scope }: Asked, most: number) =>
  queryRows(
    db.pool,
    sql`select f.id, f.number, f.found_on from failure_fact f where ${filterWhere(filter, scope)} order by f.found_on, f.id limit ${most + 1}`,
    Event,
  );

const Action = z.object({
  id: z.string(),
  day: z.string(),
  label: z.string(),
  cause: z.string().nullable(),
  housing: z.string().nullable(),
  terminal: z.string().nullable(),
  tool: z.string().nullable(),
  line: z.string().nullable(),
});
export type DatedAction = z.infer<typeof Action>;

/** Corrective and preventive actions carried out in the period, with what they were to prevent. */
export const readActions = ({ db, period, plants }: Asked): Promise<DatedAction[]> =>
  queryRows(
    db.pool,
    sql`select a.id, a.carried_out_on as day, a.number || ' ' || a.title as label, e.cause, e.housing_id as housing, e.terminal_id as terminal,
        e.tool_id as tool, e.line_id as line
      from action a left join effect_plan e on e.action_id = a.id
      where a.plant_id = any(${plants.map(({ id }) => id)}::uuid[]) and a.kind in ('corrective', 'preventive') and a.state <> 'given_up'
        and a.carried_out_on >= ${period.from}::date and a.carried_out_on < ${period.to}::date order by a.carried_out_on, a.id`,
    Action,
  );

const Service = z.object({ id: z.string(), day: z.string(), label: z.string() });
/** Dated services of tools in the period: of those that the filter names, else of those that its reports name. */
export function readServices({ db, period, plants, filter, scope }: Asked) {
  const named = filter.tool?.filter((tool) => tool !== 'none') ?? [];
  const tools = named.length
    ? sql`${named}::uuid[]`
    : sql`array(select distinct f.tool_id from failure_fact f where f.tool_id is not null and ${filterWhere(filter, scope)})`;
  return queryRows(
    db.pool,
    sql`select t.id, s.serviced_on as day, t.code as label from tool_service s join tool t on t.id = s.tool_id
      where s.plant_id = any(${plants.map(({ id }) => id)}::uuid[]) and s.tool_id = any(${tools})
        and s.serviced_on >= ${period.from}::date and s.serviced_on < ${period.to}::date order by s.serviced_on, t.code`,
    Service,
  );
}

const lookBack = 56;
const Lot = z.object({ kind: z.enum(['reelLot', 'housingLot']), day: z.string(), label: z.string() });
/** First use of lots that the reports of the eight weeks before the period do not name. */
export function readNewLots({ db, period, filter, scope }: Asked) {
  const wider: Filter = { ...filter, from: addDays(period.from, -lookBack) };
  const first = (kind: 'reelLot' | 'housingLot') => {
    const column = kind === 'reelLot' ? sql`f.reel_lot` : sql`f.housing_lot`;
    return sql`select ${kind} as kind, ${column} as label, min(f.found_on) as day from failure_fact f
      where ${column} is not null and ${filterWhere(wider, scope)} group by ${column} having min(f.found_on) >= ${period.from}::date`;
  };
  return queryRows(db.pool, sql`${first('reelLot')} union all ${first('housingLot')} order by 3, 2`, Lot);
}
