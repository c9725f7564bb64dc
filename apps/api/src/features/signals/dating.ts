/** When a signal began: its weeks against the terminals its plants inserted. */
import type { Day } from '#analysis/calendar/day.ts';
import { addDays } from '#analysis/calendar/day.ts';
import { changePoint } from '#analysis/signals/change-point.ts';
import type { Signal } from '#contracts/signals.ts';

type Since = Signal['since'];

/** Chance of so strong a change in a steady series, up to which a change is dated. */
const alpha = 0.05;
const replicates = 199;

/** `weeks` with production in order of time; a week without is left out, and its reports with it. */
export function dateOf(
  reports: ReadonlyMap<Day, number>,
  weeks: readonly { week: Day; terminals: number }[],
  seed: number,
): Since {
  const produced = weeks.filter(({ terminals }) => terminals > 0);
  const series = produced.map(({ week, terminals }) => ({ failures: reports.get(week) ?? 0, exposure: terminals }));
  const change = changePoint(series, { seed, replicates });
  if (change.reason !== null) return { day: null, reason: change.reason };
  if (change.p > alpha) return { day: null, reason: 'steady' };
  const { low, high, confidence } = change.interval;
  return {
    day: produced[change.at]!.week,
    low: produced[low]!.week,
    high: produced[high]!.week,
    confidence,
    ratio: change.ratio.value !== null && Number.isFinite(change.ratio.value) ? change.ratio.value : null,
    reason: null,
  };
}

/** First days of the weeks between two days, the first of them a week's start. */
export function weekStarts(from: Day, to: Day): Day[] {
  const days: Day[] = [];
  for (let day = from; day < to; day = addDays(day, 7)) days.push(day);
  return days;
}
