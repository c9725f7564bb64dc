/** What moved beyond noise in the last week of a period: one chart for each plant and cause, for the weekly review. */
import { z } from 'zod';
import { addDays, type Day } from '#analysis/calendar/day.ts';
import { weeksOf } from '#analysis/calendar/period.ts';
import { weekStart } from '#analysis/calendar/week.ts';
import { chooseChart } from '#analysis/charts/choose-chart.ts';
import { type RunRule, runSignals } from '#analysis/charts/run-rules.ts';
import { type Asked, prepare } from '#api/features/analyses/asked.service.ts';
import { madeOn } from '#api/features/analyses/exposure.service.ts';
import type { Actor } from '#api/platform/actor.ts';
import type { Database } from '#db/client.ts';
import { queryRows, sql } from '#db/sql.ts';
import { draw } from './draw.ts';

const weeksLooked = 52;

export interface Moved {
  plantId: string;
  plantCode: string;
  /** `none`: reports without a cause yet */
  cause: string;
  week: { from: Day; to: Day };
  reports: number;
  /** reports per million terminals, and its usual level */
  rate: number;
  centre: number;
  rules: RunRule[];
  worse: boolean;
}

const Row = z.object({ plant_id: z.string(), cause: z.string(), week: z.string(), reports: z.number() });

function countByWeek({ db, period, plants, own }: Asked): Promise<z.infer<typeof Row>[]> {
  const anchor = addDays('1999-12-26', own.firstWeekday);
  return queryRows(
    db.pool,
    sql`select f.plant_id, coalesce(f.cause::text, 'none') as cause, f.found_on - (f.found_on - ${anchor}::date) % 7 as week, sum(f.reports)::int as reports
      from failure_day_fact f where f.found_on >= ${period.from}::date and f.found_on < ${period.to}::date
        and f.plant_id = any(${plants.map(({ id }) => id)}::uuid[]) group by 1, 2, 3`,
    Row,
  );
}

/** Patterns that end in the week before `to`; rare faults are left to the signals. Most reports first. */
export async function movedBeyondNoise(
  db: Database,
  actor: Actor,
  { plant, to }: { plant?: string[]; to: Day },
  at: Date,
): Promise<Moved[]> {
  const question = plant ? { plant } : {};
  const asked = await prepare(db, actor, question, at, (own) => {
    const end = weekStart(to, own.firstWeekday);
    return { from: addDays(end, -7 * weeksLooked), to: end };
  });
  const [rows, made] = await Promise.all([countByWeek(asked), madeOn(asked, asked.period)]);
  const weeks = weeksOf(asked.period, asked.own.firstWeekday);
  const inserted = new Map<string, number>();
  for (const row of made) {
    const key = `${row.plant_id} ${weekStart(row.day, asked.own.firstWeekday)}`;
    inserted.set(key, (inserted.get(key) ?? 0) + row.terminals);
  }
  const moved = [...Map.groupBy(rows, (row) => `${row.plant_id} ${row.cause}`).values()].flatMap((counted): Moved[] => {
    const { plant_id: plantId, cause } = counted[0]!;
    const reports = new Map(counted.map((row) => [row.week, row.reports]));
    const samples = weeks
      .map(({ from, to: end }) => ({
        key: from,
        from,
        to: end,
        report: null,
        reports: reports.get(from) ?? 0,
        terminals: inserted.get(`${plantId} ${from}`) ?? null,
        gap: null,
      }))
      .filter(({ terminals }) => terminals !== null);
    const last = samples.at(-1);
    const choice = chooseChart(
      samples.map(({ key, reports: failures, terminals }) => ({ key, failures, exposure: terminals })),
    );
    if (!last || last.from !== weeks.at(-1)!.from || choice.kind !== 'u') return [];
    const chart = draw('u', samples, choice.corrected, {});
    if (chart.reason !== null) return [];
    const found = runSignals(chart.points).filter((signal) => signal.at === chart.points.length - 1);
    if (found.length === 0) return [];
    const { value: rate, centre } = chart.points.at(-1)!;
    const week = { from: last.from, to: last.to };
    const plantCode = asked.plants.find(({ id }) => id === plantId)!.code;
    const rules = found.map(({ rule }) => rule);
    return [{ plantId, plantCode, cause, week, reports: last.reports, rate, centre, rules, worse: rate > centre }];
  });
  return moved.sort((a, b) => b.reports - a.reports);
}
