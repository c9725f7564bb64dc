import type { Interval } from '#analysis/estimate.ts';
import { goodmanIntervals } from '#analysis/pareto/goodman-intervals.ts';
import { sumShareIntervals } from '#analysis/pareto/sum-share-intervals.ts';
import { topProbabilities } from '#analysis/pareto/top-probabilities.ts';
import { topSumProbabilities } from '#analysis/pareto/top-sum-probabilities.ts';
import type { Measure } from '#contracts/analyses.ts';
import type { Converter } from './money.rules.ts';
import { weightsOf } from './pareto.groups.ts';
import { type Ranked, rateOf } from './pareto.rank.ts';
import { reportsIn } from './sums.ts';

interface Certainty {
  shareIntervals: (Interval | null)[];
  topProbabilities: (number | null)[];
}

/** How sure shares and ranking of the first `shown` bars are; all bars take part. */
export function certainty(
  ranked: readonly Ranked[],
  shown: number,
  { measure, top: k, seed, money }: { measure: Measure; top: number; seed: number; money: Converter },
): Certainty {
  if (measure === 'reports') {
    const counts = ranked.map(({ group }) => reportsIn(group.now));
    return { shareIntervals: goodmanIntervals(counts), topProbabilities: topProbabilities(counts, { k, seed }) };
  }
  if (measure === 'rate') return { shareIntervals: [], topProbabilities: topRates(ranked, { k, seed, money }) };
  const weights = ranked.map(({ group }) => weightsOf(group.now, measure, money));
  const rest = weightsOf(
    ranked.slice(shown).flatMap(({ group }) => group.now),
    measure,
    money,
  );
  const bars = weights.slice(0, shown);
  return {
    shareIntervals: sumShareIntervals(weights.length > shown ? [...bars, rest] : bars, { seed }) ?? [],
    topProbabilities: topSumProbabilities(weights, { k, seed }),
  };
}

/** Among the bars that have a rate. */
function topRates(ranked: readonly Ranked[], options: { k: number; seed: number; money: Converter }): number[] {
  const rates = ranked.flatMap(({ group }) => {
    if (rateOf(group).value === null) return [];
    const inserted = group.exposure!.terminals;
    const { sum, sumOfSquares } = weightsOf(group.now, 'rate', options.money);
    return [{ sum: sum / inserted, sumOfSquares: sumOfSquares / inserted ** 2 }];
  });
  return topSumProbabilities(rates, options);
}
