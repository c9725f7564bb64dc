/** The points of a chart before it is drawn: weeks, or gaps from one report to the next. Pure. */

import type { z } from 'zod';
import { addDays, type Day, daysBetween } from '#analysis/calendar/day.ts';
import type { RateBucket } from '#contracts/analyses.ts';

export interface Sample {
  key: string;
  from: Day;
  to: Day;
  report: { id: string; number: string } | null;
  reports: number;
  /** null: not known */
  terminals: number | null;
  /** terminals or days since the report before; null for a week */
  gap: number | null;
}

export type Week = Pick<z.infer<typeof RateBucket>, 'from' | 'to' | 'reports' | 'exposureTerminals'>;

export const weekSamples = (weeks: readonly Week[]): Sample[] =>
  weeks.map(({ from, to, reports, exposureTerminals }) => ({
    key: from,
    from,
    to,
    report: null,
    reports,
    terminals: exposureTerminals > 0 ? exposureTerminals : null,
    gap: null,
  }));

export interface Event {
  id: string;
  number: string;
  found_on: Day;
}

/** Places of reports within their days: as the hour is not known, those of a day lie evenly over it. */
function placesInDay(events: readonly Event[]): number[] {
  const perDay = Map.groupBy(events, ({ found_on }) => found_on);
  const seen = new Map<Day, number>();
  return events.map(({ found_on }) => {
    const before = seen.get(found_on) ?? 0;
    seen.set(found_on, before + 1);
    return (before + 0.5) / perDay.get(found_on)!.length;
  });
}

/** From each report to the one before: terminals inserted where `made` says them by day, else days. In order of time. */
export function gapSamples(events: readonly Event[], made: ReadonlyMap<Day, number> | null): Sample[] {
  const places = placesInDay(events);
  const first = events[0]?.found_on;
  if (!first) return [];
  let [day, sum] = [first, 0];
  const at = events.map(({ found_on }, i) => {
    if (!made) return daysBetween(first, found_on) + places[i]!;
    for (; day < found_on; day = addDays(day, 1)) sum += made.get(day) ?? 0;
    return sum + places[i]! * (made.get(found_on) ?? 0);
  });
  return events.slice(1).map(({ id, number, found_on }, i) => {
    const gap = at[i + 1]! - at[i]!;
    return {
      key: id,
      from: found_on,
      to: addDays(found_on, 1),
      report: { id, number },
      reports: 1,
      terminals: made ? Math.round(gap) : null,
      gap: made ? Math.round(gap) : gap,
    };
  });
}
