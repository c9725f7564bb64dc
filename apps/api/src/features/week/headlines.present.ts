import { type Period, periodDays } from '#analysis/calendar/period.ts';
import { compareSumsWithPrevious, type SummedBar } from '#analysis/comparisons/compare-with-previous.ts';
import type { Estimate } from '#analysis/estimate.ts';
import type { WeightedSum } from '#analysis/rates/weighted-poisson-interval.ts';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import { countsOf } from '#api/features/analyses/counts.ts';
import { dpmoEstimate, falseDiscoveryRate, sumEstimate, toChange } from '#api/features/analyses/estimates.ts';
import type { Converter } from '#api/features/analyses/money.rules.ts';
import { reportWeights, terminalWeights } from '#api/features/analyses/sums.ts';
import type { Week } from '#contracts/analyses.ts';
import type { Filter } from '#contracts/shared/filter.ts';
import type { HeadlineSums } from './headlines.queries.ts';
import { queryOf } from './links.ts';

type Headline = Week['headlines'][number];
type Rows = readonly HeadlineSums[];
/** The sums of one week and the terminals inserted in it. */
export interface WeekSums {
  rows: Rows;
  inserted: number;
}

const counted = (rows: Rows, of: (row: HeadlineSums) => number): WeightedSum => {
  const sum = rows.reduce((all, row) => all + of(row), 0);
  return { sum, sumOfSquares: sum, largest: 1 };
};

function moneyWeights(rows: Rows, money: Converter, kind: 'booked' | 'estimate'): WeightedSum {
  const total = { sum: 0, sumOfSquares: 0, largest: 0 };
  for (const row of rows) {
    const factor = money.factor(row.plant_id);
    total.sum += factor * row[kind];
    total.sumOfSquares += factor ** 2 * row[`${kind}_squared`];
    total.largest = Math.max(total.largest, factor * row[`${kind}_largest`]);
  }
  return total;
}

interface Kind {
  key: Headline['key'];
  weights(rows: Rows, money: Converter): WeightedSum;
  /** the figure itself where it is not the sum of the weights */
  figure?(week: WeekSums, weights: WeightedSum, money: Converter): Estimate;
  filter: Filter;
}

const kinds: readonly Kind[] = [
  { key: 'reports', weights: reportWeights, filter: {} },
  { key: 'terminals', weights: terminalWeights, filter: {} },
  {
    key: 'dpmo',
    weights: terminalWeights,
    figure: ({ inserted }, weights) => dpmoEstimate(weights, inserted),
    filter: {},
  },
  {
    key: 'booked',
    weights: (rows, money) => moneyWeights(rows, money, 'booked'),
    figure: ({ rows }, weights, money) => sumEstimate(countsOf([rows], money).total.bookedMinor, weights),
    filter: { cost: 'booked' },
  },
  {
    key: 'estimate',
    weights: (rows, money) => moneyWeights(rows, money, 'estimate'),
    figure: ({ rows }, weights, money) => sumEstimate(countsOf([rows], money).total.estimateMinor, weights),
    filter: { cost: 'estimated' },
  },
  { key: 'escaped', weights: (rows) => counted(rows, (row) => row.escaped), filter: { gates: 2 } },
  { key: 'outside', weights: (rows) => counted(rows, (row) => row.outside), filter: { source: ['customer', 'field'] } },
];

/** The week in seven figures, each against the week before: per terminal inserted, or per day where no production is known. */
export function presentHeadlines(
  { money, period }: Pick<Asked, 'money' | 'period'>,
  compared: Period,
  { now, before }: { now: WeekSums; before: WeekSums },
  own: Filter,
): Headline[] {
  const isRate = now.inserted > 0 && before.inserted > 0;
  const weighed = kinds.map((kind) => ({
    kind,
    now: kind.weights(now.rows, money),
    before: kind.weights(before.rows, money),
  }));
  const exposures = (kind: Kind) =>
    isRate || kind.key === 'dpmo'
      ? { now: now.inserted || null, before: before.inserted || null }
      : { now: periodDays(period), before: periodDays(compared) };
  const bars = weighed.map(
    (bar): SummedBar => ({
      key: bar.kind.key,
      now: { ...bar.now, exposure: exposures(bar.kind).now },
      before: { ...bar.before, exposure: exposures(bar.kind).before },
    }),
  );
  const changes = compareSumsWithPrevious(bars, { falseDiscoveryRate });
  const figureOf = (kind: Kind, week: WeekSums, weights: WeightedSum) =>
    kind.figure ? kind.figure(week, weights, money) : sumEstimate(weights.sum, weights);
  return weighed.map(({ kind, now: weights, before: earlier }, place) => ({
    key: kind.key,
    figure: figureOf(kind, now, weights),
    previous: figureOf(kind, before, earlier),
    change: toChange(changes[place]!, isRate ? 'rate' : 'count'),
    filter: queryOf({ ...own, ...kind.filter }),
  }));
}
