import { type CauseCost, meanEffect, type PreventionOption, requireOptions } from './options.ts';

export type BestSet = {
  /** keys in the order given; empty when nothing is worth its cost */
  keys: string[];
  /** expected net worth over the horizon, minor units: horizon × (saving - yearly cost) - cost at the start */
  worth: number;
  onceCost: number;
};

export const mostOptions = 12;

/**
 * The set of options with the highest expected net worth whose cost at the start stays within a budget: exact, not greedy.
 *
 * Depth-first search over every set; a branch is cut when even all remaining options for nothing could not beat the best so far.
 * Independent effects make the expected product of (1 - effect) the product of the expected ones, so no draws are needed.
 * Source: branch and bound, Land A.H. and Doig A.G. (1960) Econometrica 28:497-520 (from memory); tested against every set.
 *
 * @param options at most 12
 * @param budget for costs at the start, minor units
 */
export function bestSet(
  causes: readonly CauseCost[],
  options: readonly PreventionOption[],
  settings: { years: number; horizonYears: number; budget: number },
): BestSet {
  const { years, horizonYears, budget } = settings;
  requireOptions(options);
  if (options.length > mostOptions) throw new RangeError(`At most ${mostOptions} options, not ${options.length}.`);
  const perYear = causes.map(({ sum }) => sum / years);
  const kept = options.map((option) =>
    causes.map(({ cause }) =>
      option.effects.reduce((left, effect) => (effect.cause === cause ? left * (1 - meanEffect(effect)) : left), 1),
    ),
  );
  /** what would be left of each cause with this option and all after it */
  const keptFrom = kept.map((_, from) =>
    causes.map((__, cause) => kept.slice(from).reduce((left, row) => left * row[cause]!, 1)),
  );
  const saved = (left: readonly number[]): number =>
    horizonYears * left.reduce((sum, share, cause) => sum + perYear[cause]! * (1 - share), 0);

  let best: BestSet = { keys: [], worth: 0, onceCost: 0 };
  const search = (next: number, chosen: readonly number[], left: readonly number[]): void => {
    const onceCost = chosen.reduce((sum, i) => sum + options[i]!.onceCost, 0);
    const cost = onceCost + horizonYears * chosen.reduce((sum, i) => sum + options[i]!.yearlyCost, 0);
    const worth = saved(left) - cost;
    if (worth > best.worth) best = { keys: chosen.map((i) => options[i]!.key), worth, onceCost };
    if (next === options.length) return;
    if (saved(left.map((share, cause) => share * keptFrom[next]![cause]!)) - cost <= best.worth) return;
    const option = options[next]!;
    const allowed = chosen.every((i) => !excluded(option, options[i]!));
    if (allowed && onceCost + option.onceCost <= budget) {
      search(
        next + 1,
        [...chosen, next],
        left.map((share, cause) => share * kept[next]![cause]!),
      );
    }
    search(next + 1, chosen, left);
  };
  search(
    0,
    [],
    causes.map(() => 1),
  );
  return best;
}

const excluded = (a: PreventionOption, b: PreventionOption): boolean =>
  Boolean(a.excludes?.includes(b.key) || b.excludes?.includes(a.key));
