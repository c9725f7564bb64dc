import { addDays, type Day } from '#analysis/calendar/day.ts';
import { weekStart } from '#analysis/calendar/week.ts';
import { chooseChart } from '#analysis/charts/choose-chart.ts';
import { designCusum } from '#analysis/charts/cusum-design.ts';
import { runSignals } from '#analysis/charts/run-rules.ts';
import { ratesOf } from '#api/features/analyses/analyses.service.ts';
import { type Asked, prepare } from '#api/features/analyses/asked.service.ts';
import { madeOn } from '#api/features/analyses/exposure.service.ts';
import { periodAsked, today } from '#api/features/analyses/period.rules.ts';
import type { Actor } from '#api/platform/actor.ts';
import type { ChartKind, Charts, ChartsQuery } from '#contracts/charts.ts';
import type { Database } from '#db/client.ts';
import { readEvents } from './charts.queries.ts';
import { cusumOf, draw, falseAlarmEvery, isWorse } from './draw.ts';
import { marksOf } from './markers.ts';
import { phaseStarts } from './phases.ts';
import { gapSamples, type Sample, weekSamples } from './samples.ts';

/** Limits want more points than a quarter has weeks. */
const usualWeeks = 52;
/** More gaps than this say no more than weeks would. */
const mostGaps = 400;

export const prepareChart = (db: Database, actor: Actor, query: ChartsQuery, at: Date): Promise<Asked> =>
  prepare(db, actor, query, at, (own) => {
    if (query.from || query.to) return periodAsked(query, at, own);
    const to = weekStart(today(at, own), own.firstWeekday);
    return { from: addDays(to, -7 * usualWeeks), to };
  });

const isGap = (kind: ChartKind) => kind === 'g' || kind === 't';

async function samplesOf(asked: Asked, kind: ChartKind, weeks: readonly Sample[]): Promise<Sample[] | null> {
  if (kind === 'u') return weeks.filter(({ terminals }) => terminals !== null);
  if (kind === 'c') return weeks.filter(({ from, to }) => addDays(from, 7) === to);
  const [events, made] = await Promise.all([
    readEvents(asked, mostGaps),
    kind === 'g' ? madeOn(asked, asked.period) : null,
  ]);
  if (events.length > mostGaps) return null;
  const byDay = new Map<Day, number>();
  for (const { day, terminals } of made ?? []) byDay.set(day, (byDay.get(day) ?? 0) + terminals);
  return gapSamples(events, made && byDay);
}

/** Weeks as the choice of the chart sees them: with exposure where most weeks have it, and then only those. */
function chosenBy(weeks: readonly Sample[]) {
  const produced = weeks.filter(({ terminals }) => terminals !== null);
  const known = 2 * produced.length >= weeks.length && produced.length > 0;
  const choice = chooseChart(
    (known ? produced : weeks).map(({ key, reports, terminals }) => ({
      key,
      failures: reports,
      exposure: known ? terminals : null,
    })),
  );
  return { choice, kind: choice.reason === null ? (choice.kind as ChartKind) : null };
}

/** A control chart of the reports that the filter counts. */
export async function chartOf(asked: Asked, query: ChartsQuery): Promise<Charts> {
  const [rates, marks] = await Promise.all([ratesOf(asked, 'week'), marksOf(asked)]);
  const weeks = weekSamples(rates.buckets);
  const { choice, kind: suggestedKind } = chosenBy(weeks);
  const kind = query.kind ?? suggestedKind;
  const samples = kind && (await samplesOf(asked, kind, weeks));
  const corrected = choice.reason === null && choice.corrected && kind !== null && !isGap(kind);
  const starts = phaseStarts(samples ?? [], [
    ...(query.actions ? marks.aimed.map(({ day, label }) => ({ day, because: 'action' as const, label })) : []),
    ...(query.phaseFrom ?? []).map((day) => ({ day, because: 'chosen' as const, label: null })),
  ]);
  const chart =
    kind && samples
      ? draw(kind, samples, corrected, {
          phaseStarts: starts.map(({ key }) => key),
          limits: query.limits === 'phase' ? { mode: 'phase' } : { mode: query.limits, points: query.points },
        })
      : null;
  const head = {
    ...asked.head,
    exposureScope: rates.exposureScope,
    reports: rates.overall.reports,
    terminals: rates.overall.exposureTerminals,
    weeksWithoutProduction: weeks.filter(({ terminals }) => terminals === null).length,
    suggested:
      choice.reason === null
        ? {
            kind: suggestedKind!,
            because: choice.because as NonNullable<Charts['suggested']>['because'],
            reportsPerWeek: choice.facts.failuresPerPeriod,
            dispersionIndex: choice.facts.dispersionIndex,
            corrected: choice.corrected,
          }
        : null,
    kind,
    corrected,
    falseAlarmEvery: falseAlarmEvery(query.rule, query.oneSide),
    markers: marks.markers,
    left: marks.left,
  };
  if (!chart || chart.reason !== null || !kind) {
    const reason = chart?.reason ?? (kind ? 'too_many' : (choice.reason ?? 'too_few'));
    return { ...head, reason, points: [], phases: [], patterns: [], cusum: { points: null, reason } };
  }
  const byKey = new Map(samples!.map((sample) => [sample.key, sample]));
  const patterns = runSignals(chart.points, query.rule, query.oneSide);
  const design = designCusum(query.cusumShift, query.falseAlarmEvery);
  return {
    ...head,
    reason: null,
    points: chart.points.map(({ z: _, ...point }, place) => {
      const { from, to, report, reports, terminals } = byKey.get(point.key)!;
      const rules = patterns.filter(({ at }) => at === place).map(({ rule }) => rule);
      return { ...point, from, to, report, reports, terminals, rules };
    }),
    phases: chart.phases.map(({ fromKey, ...phase }) => {
      const start = starts.find(({ key }) => key === fromKey);
      return {
        ...phase,
        from: byKey.get(fromKey)!.from,
        because: start?.because ?? 'start',
        label: start?.label ?? null,
      };
    }),
    patterns: patterns.map(({ rule, from, at, direction }) => ({
      rule,
      fromKey: chart.points[from]!.key,
      atKey: chart.points[at]!.key,
      direction,
      worse: isWorse(kind, direction),
    })),
    cusum: {
      slack: design.slack,
      limit: design.limit,
      shift: query.cusumShift,
      falseAlarmEvery: query.falseAlarmEvery,
      foundAfter: design.foundAfter,
      points: cusumOf(kind, chart, design),
      reason: null,
    },
  };
}
