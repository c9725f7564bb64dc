import { z } from 'zod';
import { addDays, type Day } from '#analysis/calendar/day.ts';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import { filterWhere } from '#api/platform/filter.ts';
import { queryRows, raw, type Sql, sql } from '#db/sql.ts';
import type { Member, Part } from './members.ts';

const Row = z.object({
  week: z.string(),
  inside: z.boolean(),
  plant: z.string().nullable(),
  housing: z.string().nullable(),
  terminal: z.string().nullable(),
  tool: z.string().nullable(),
  lot: z.string().nullable(),
  housingLot: z.string().nullable(),
  fixturePosition: z.string().nullable(),
  cavity: z.string().nullable(),
  reports: z.number(),
});
export type Matched = z.infer<typeof Row>;

/** A value where some signal asks for it, else null, so that reports fall into few groups. */
function asked(column: Sql, cast: Sql, members: readonly Member[], part: Part | 'plant'): Sql {
  const values = [...new Set(members.flatMap((member) => member[part] ?? []))];
  return values.length === 0
    ? sql`null::${cast}`
    : sql`case when ${column} = any(${values}::${cast}[]) then ${column} end`;
}

/** Reports by week, whether inside the period, and by what they name of the members, from `from` until the end of the period. Weeks as the plant has them. */
export function matchedByWeek(of: Asked, members: readonly Member[], from: Day): Promise<Matched[]> {
  const { db, filter, scope, own } = of;
  const anchor = addDays('1999-12-26', own.firstWeekday);
  const uuid = raw('uuid');
  const text = raw('text');
  return queryRows(
    db.pool,
    sql`select f.found_on - (f.found_on - ${anchor}::date) % 7 as week,
        f.found_on >= ${of.period.from}::date as inside, ${asked(raw('f.plant_id'), uuid, members, 'plant')} as plant,
        ${asked(raw('f.housing_id'), uuid, members, 'housing')} as housing, ${asked(raw('f.terminal_id'), uuid, members, 'terminal')} as terminal,
        ${asked(raw('f.tool_id'), uuid, members, 'tool')} as tool, ${asked(raw('f.reel_lot'), text, members, 'lot')} as lot,
        ${asked(raw('f.housing_lot'), text, members, 'housingLot')} as "housingLot",
        ${asked(raw('f.fixture_position'), text, members, 'fixturePosition')} as "fixturePosition",
        ${asked(raw('f.cavity'), text, members, 'cavity')} as cavity, count(*)::int as reports
      from failure_fact f where ${filterWhere({ ...filter, from }, scope)} group by 1, 2, 3, 4, 5, 6, 7, 8, 9, 10`,
    Row,
  );
}
