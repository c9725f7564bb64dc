import { previousPeriod } from '#analysis/calendar/period.ts';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import { addExposures } from '#api/features/analyses/pareto.groups.ts';
import { presentPareto } from '#api/features/analyses/pareto.present.ts';
import { countPareto } from '#api/features/analyses/pareto.service.ts';
import type { ParetoBar, Week } from '#contracts/analyses.ts';
import type { Filter } from '#contracts/shared/filter.ts';
import { Cause, stageOf } from '#contracts/taxonomy.ts';
import { costliestEscapes, type Escape } from './costliest.queries.ts';
import { countDueTools, countReports, daysWithoutProduction } from './decisions.queries.ts';
import { presentHeadlines, type WeekSums } from './headlines.present.ts';
import { type HeadlineSums, headlineSums } from './headlines.queries.ts';
import { queryOf, reportsLink } from './links.ts';

const causesShown = { dimension: 'cause', measure: 'reports', compare: 'previous', top: 3, bars: 5 } as const;
const escapesShown = 8;

type Decision = Week['decisions'][number];
/** What is open at the end of the week, however old it is. */
const openReports: readonly (Filter & { kind: Decision['kind'] })[] = [
  { kind: 'safety_unsorted', safety: true, cause: ['none'] },
  { kind: 'outside_unsorted', source: ['customer', 'field'], cause: ['none'] },
  { kind: 'costly_unsorted', cost: 'booked', cause: ['none'] },
  { kind: 'disposition_pending', disposition: ['pending'] },
];

export async function weekOf(asked: Asked, plant: Filter['plant']): Promise<Week> {
  const { period } = asked;
  const compared = previousPeriod(period);
  const own: Filter = { ...period, plant };
  const open = openReports.map(({ kind, ...chosen }) => ({ kind, filter: { to: period.to, plant, ...chosen } }));
  const [causes, now, before, costliest, counts, dueTools, days] = await Promise.all([
    countPareto(asked, causesShown),
    headlineSums(asked, period),
    headlineSums(asked, compared),
    costliestEscapes(asked, escapesShown),
    countReports(
      asked,
      open.map(({ filter }) => filter),
    ),
    countDueTools(asked),
    daysWithoutProduction(asked),
  ]);
  const weeks = {
    now: { rows: now, inserted: addExposures(causes.counted.exposure).terminals } satisfies WeekSums,
    before: { rows: before, inserted: addExposures(causes.counted.exposureBefore).terminals } satisfies WeekSums,
  };
  return {
    ...asked.head,
    compared,
    headlines: presentHeadlines(asked, compared, weeks, own),
    topCauses: presentPareto(asked, causesShown, causes.counted, compared).bars.map((bar) => toCause(bar, own)),
    costliest: costliest.map((row) => toEscape(row, asked)),
    decisions: [
      ...open.map(({ kind, filter }, place) => ({ kind, count: counts[place]!, link: reportsLink(filter) })),
      { kind: 'tool_service_due', count: dueTools, link: `/master-data/tools?${queryOf({ plant, due: true })}` },
    ],
    gaps: presentGaps(now, days, own),
  };
}

function toCause(bar: ParetoBar, own: Filter): Week['topCauses'][number] {
  const cause = bar.key === 'none' ? null : Cause.parse(bar.key);
  const { reports, terminals, bookedMinor, estimateMinor } = bar;
  return {
    reports,
    terminals,
    bookedMinor,
    estimateMinor,
    cause,
    share: bar.share!,
    shareInterval: bar.shareInterval!,
    topProbability: bar.topProbability!,
    change: bar.change!,
    filter: queryOf({ ...own, cause: [cause ?? 'none'] }),
  };
}

function toEscape(row: Escape, { plants }: Asked): Week['costliest'][number] {
  const plant = plants.find(({ id }) => id === row.plant_id)!;
  return {
    id: row.id,
    number: row.number,
    plantCode: plant.code,
    cause: row.cause,
    origin: row.origin === null ? null : stageOf(row.origin),
    found: stageOf(row.found),
    gatesPassed: row.gates_passed,
    terminals: row.terminals,
    bookedMinor: row.booked,
    estimateMinor: row.estimate,
    currency: plant.currency,
  };
}

function presentGaps(
  rows: readonly HeadlineSums[],
  days: { days: number; without: number },
  own: Filter,
): Week['gaps'] {
  const sum = (of: (row: HeadlineSums) => number) => rows.reduce((all, row) => all + of(row), 0);
  const of = sum((row) => row.reports);
  const { from, to, plant } = own;
  return [
    { kind: 'no_cause', count: sum((row) => row.no_cause), of, link: reportsLink({ ...own, cause: ['none'] }) },
    { kind: 'no_origin', count: sum((row) => row.no_origin), of, link: reportsLink({ ...own, origin: ['none'] }) },
    { kind: 'no_evidence', count: sum((row) => row.no_evidence), of, link: reportsLink({ ...own, evidence: false }) },
    { kind: 'no_cost', count: sum((row) => row.without_cost), of, link: reportsLink({ ...own, cost: 'none' }) },
    { kind: 'no_production', count: days.without, of: days.days, link: `/production?${queryOf({ from, to, plant })}` },
  ];
}
