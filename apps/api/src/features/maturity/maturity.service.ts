import type { Day } from '#analysis/calendar/day.ts';
import { addMonths, type Month } from '#analysis/maturity/triangle.ts';
import { productionByMonth } from '#api/features/analyses/analyses.service.ts';
import { type Asked, prepare } from '#api/features/analyses/asked.service.ts';
import { queryOf } from '#api/features/week/links.ts';
import type { Actor } from '#api/platform/actor.ts';
import type { Maturity } from '#contracts/maturity.ts';
import type { AnalysisFilter, Filter } from '#contracts/shared/filter.ts';
import type { Database } from '#db/client.ts';
import { type Starts, startsOf, triangleOf } from './cohorts.ts';
import { presentLife } from './life.present.ts';
import { presentTriangle } from './maturity.present.ts';
import { firstReports, reportsByAge, reportsByMonths, type Seen, undatedReports } from './outside.queries.ts';
import { type Pattern, patternOf } from './pattern.ts';
import { buildMonths, firstDayOf, monthOf, reportedUntil } from './window.rules.ts';

type Query = AnalysisFilter & { months: number; horizon: number };
const outside = ['customer', 'field'] as const;
/** Older build months say little of how failures come in today. */
const patternMonths = 36;

/** The filter without what the triangle itself is drawn over; only reports from customers and the field. */
function baseOf({ from, builtFrom, builtTo, built, source, ...rest }: Filter): Filter {
  const kept = outside.filter((one) => !source?.length || source.includes(one));
  return { ...rest, source: kept.length > 0 ? kept : source };
}

export async function maturityOf(db: Database, actor: Actor, query: Query, at: Date): Promise<Maturity> {
  const asked = await prepare(db, actor, query, at, (own) =>
    buildMonths(reportedUntil(query.to, at, own), query.months),
  );
  const { period } = asked;
  const base: Filter = baseOf(asked.filter);
  const last = addMonths(monthOf(period.to), -1);
  const [first, units, seen, aged] = await Promise.all([
    firstReports(asked),
    productionByMonth(asked),
    reportsByMonths(asked, base, 'outside'),
    reportsByAge(asked, base),
  ]);
  const starts = startsOf(first, { from: monthOf(period.from), last });
  const from = [...starts.values()].sort()[0] ?? monthOf(period.from);
  const undated: Filter = { ...base, from: firstDayOf(from), built: false };
  const without = await undatedReports(asked, undated, 'outside');
  return {
    ...asked.head,
    lastMonth: last,
    recordsFrom: from,
    ...presentTriangle(triangleOf(starts, units, seen, last), { starts, base, last, horizon: query.horizon }),
    leftOut: [...counted('no_build_date', undated, without), ...builtEarlier(asked, starts, seen, base)],
    life: presentLife(starts, units, aged, period.to),
  };
}

/** How field failures come in with age, by everything that the field reported of these plants' last build months. */
export async function fieldPattern(asked: Asked, until: Day): Promise<Pattern> {
  const window = buildMonths(until, patternMonths);
  const filter: Filter = { plant: asked.filter.plant, to: until };
  const [first, seen] = await Promise.all([firstReports(asked), reportsByMonths(asked, filter, 'field')]);
  const last = addMonths(monthOf(until), -1);
  const starts = startsOf(first, { from: monthOf(window.from), last });
  return patternOf(triangleOf(starts, [], seen, last));
}

const counted = (
  reason: Maturity['leftOut'][number]['reason'],
  filter: Filter,
  rows: readonly { reports: number }[],
): Maturity['leftOut'] => {
  const reports = rows.reduce((sum, row) => sum + row.reports, 0);
  return reports === 0 ? [] : [{ reason, reports, filter: queryOf(filter) }];
};

/** Reports of build months before the records of their plant began, by the plants that began together. */
function builtEarlier({ filter }: Asked, starts: Starts, seen: readonly Seen[], base: Filter): Maturity['leftOut'] {
  const together = Map.groupBy(starts, ([, start]) => start);
  return [...together].flatMap(([start, plants]: [Month, [string, Month][]]) => {
    const ids = plants.map(([plantId]) => plantId);
    return counted(
      'built_earlier',
      { ...base, plant: together.size === 1 ? filter.plant : ids, built: true, builtTo: firstDayOf(start) },
      seen.filter(({ plant_id: plantId, built }) => ids.includes(plantId) && monthOf(built) < start),
    );
  });
}
