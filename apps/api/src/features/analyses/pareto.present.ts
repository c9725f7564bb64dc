import type { Counts, Measure, Pareto, ParetoBar } from '#contracts/analyses.ts';
import type { Asked } from './asked.service.ts';
import { countsOf } from './counts.ts';
import { dpmoEstimate, sumEstimate } from './estimates.ts';
import type { Converter } from './money.rules.ts';
import { certainty } from './pareto.certainty.ts';
import { changes } from './pareto.changes.ts';
import { addExposures, type Counted, type Group, groupByKey, weightsOf } from './pareto.groups.ts';
import { type Ranked, rank, rateOf } from './pareto.rank.ts';
import { terminalWeights, withoutCostIn } from './sums.ts';

export interface ParetoOptions {
  dimension: Pareto['dimension'];
  measure: Measure;
  top: number;
  bars: number;
}

/** Ranked bars with their certainty and what moved; labels are the keys, to be replaced by codes where there are some. */
export function presentPareto(
  { head, period, money, seed }: Pick<Asked, 'head' | 'period' | 'money' | 'seed'>,
  { dimension, measure, top, bars }: ParetoOptions,
  counted: Counted,
  compared: Pareto['compared'],
): Pareto {
  const groups = groupByKey(counted, dimension);
  const ranked = rank(groups, measure, money);
  const shown = ranked.slice(0, bars);
  const shownKeys = new Set(shown.map(({ group }) => group.key));
  const rest = groups.filter(({ key }) => !shownKeys.has(key));
  const sure = certainty(ranked, shown.length, { measure, top, seed, money });
  const moved = compared
    ? changes(
        shown.map(({ group }) => group),
        rest,
        measure,
        money,
        { now: period, before: compared },
      )
    : [];
  const counts = countsOf([...shown.map(({ group }) => group.now), rest.flatMap(({ now }) => now)], money);
  const exposure = addExposures(counted.exposure);
  const restCounts = counts.parts.at(-1)!;
  const restBars = ranked.length - shown.length;
  const totalValue =
    measure === 'rate'
      ? dpmoEstimate(terminalWeights(counted.now), exposure.terminals).value
      : amountOf(counts.total, measure);
  return {
    ...head,
    dimension,
    measure,
    top,
    compared,
    bars: shown.map(
      (bar, place): ParetoBar => ({
        key: bar.group.key,
        label: bar.group.key,
        ...counts.parts[place]!,
        ...figureOf(bar, counts.parts[place]!, measure, money),
        shareInterval: bar.share === null ? null : (sure.shareIntervals[place] ?? null),
        topProbability: sure.topProbabilities[place] ?? null,
        rate: rateOf(bar.group),
        previous: compared ? previousOf(bar.group, measure, money) : null,
        change: moved[place] ?? null,
      }),
    ),
    other:
      restBars === 0
        ? null
        : {
            ...restCounts,
            bars: restBars,
            value: measure === 'rate' ? null : amountOf(restCounts, measure),
            share: shareOfRest(shown),
            except: [...shownKeys].map((key) => `${dimension}:${key}`),
          },
    total: {
      ...counts.total,
      value: totalValue,
      exposureTerminals: exposure.terminals,
      exposureUnits: exposure.units,
      withoutCost: withoutCostIn(counted.now),
    },
  };
}

const shareOfRest = (shown: readonly Ranked[]) => {
  const covered = shown.at(-1)?.cumulativeShare ?? null;
  return covered === null ? null : Math.max(0, 1 - covered);
};

const values: Record<Exclude<Measure, 'rate'>, (counts: Counts) => number> = {
  reports: ({ reports }) => reports,
  terminals: ({ terminals }) => terminals,
  booked: ({ bookedMinor }) => bookedMinor,
  withEstimates: ({ bookedMinor, estimateMinor }) => bookedMinor + estimateMinor,
};
const amountOf = (counts: Counts, measure: Exclude<Measure, 'rate'>) => values[measure](counts);

function figureOf({ group, share, cumulativeShare }: Ranked, counts: Counts, measure: Measure, money: Converter) {
  const { value, interval, reason } =
    measure === 'rate' ? rateOf(group) : sumEstimate(amountOf(counts, measure), weightsOf(group.now, measure, money));
  if (measure === 'rate' || reason === null) return { value, interval, reason, share, cumulativeShare };
  return { value: amountOf(counts, measure), interval: null, reason: null, share, cumulativeShare };
}

function previousOf({ before, exposureBefore }: Group, measure: Measure, money: Converter): number | null {
  if (measure === 'rate') return dpmoEstimate(terminalWeights(before), exposureBefore?.terminals ?? 0).value;
  const { total } = countsOf([before], money);
  return amountOf(total, measure);
}
