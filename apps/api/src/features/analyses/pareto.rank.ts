import { pareto } from '#analysis/pareto/pareto.ts';
import type { Measure } from '#contracts/analyses.ts';
import { dpmoEstimate } from './estimates.ts';
import type { Converter } from './money.rules.ts';
import { type Group, weightsOf } from './pareto.groups.ts';
import { terminalWeights } from './sums.ts';

export interface Ranked {
  group: Group;
  share: number | null;
  cumulativeShare: number | null;
}

export const rateOf = (group: Group) => dpmoEstimate(terminalWeights(group.now), group.exposure?.terminals ?? 0);

/** Groups from the largest down. Rates are parts of no whole: they have no shares, and those without a value come last. */
export function rank(groups: readonly Group[], measure: Measure, money: Converter): Ranked[] {
  const present = groups.filter(({ now }) => now.length > 0);
  const byKey = new Map(present.map((group) => [group.key, group]));
  const inOrder = (of: readonly Group[], amountOf: (group: Group) => number) =>
    pareto(of.map((group) => ({ key: group.key, value: amountOf(group) }))).bars;
  const amount = (group: Group) => weightsOf(group.now, measure, money).sum;

  if (measure !== 'rate')
    return inOrder(present, amount).map(({ key, share, cumulativeShare }) => ({
      group: byKey.get(key)!,
      share,
      cumulativeShare,
    }));
  const rates = new Map(present.map((group) => [group, rateOf(group).value]));
  const known = present.filter((group) => rates.get(group) !== null);
  const unknown = present.filter((group) => rates.get(group) === null);
  return [...inOrder(known, (group) => rates.get(group)!), ...inOrder(unknown, amount)].map(({ key }) => ({
    group: byKey.get(key)!,
    share: null,
    cumulativeShare: null,
  }));
}
