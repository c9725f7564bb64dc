import { defaultConfidence, type Estimate, estimate, type NotComputable, notComputable } from '../estimate.ts';
import { type Random, seededRandom } from '../numeric/random.ts';
import { requireConfidence } from '../numeric/require-count.ts';
import { sampleQuantile } from '../numeric/sample-quantile.ts';
import { gammaVariate } from '../numeric/variates.ts';
import { type CauseCost, meanEffect, type PreventionOption, requireOptions } from './options.ts';
import { pertVariate } from './pert-variate.ts';

export type WhatIf = {
  /** faults prevented, in minor units a year, before the options' own cost */
  savingPerYear: Estimate;
  /** the same after their yearly cost */
  netPerYear: Estimate;
  onceCost: number;
  /** years until the cost at the start is earned back; without upper limit where it may never be */
  paybackYears: Estimate;
  /** share of draws in which they pay within the horizon: horizon × net a year >= cost at the start */
  probabilityPays: number;
  reason: null;
};

export type WhatIfSettings = {
  /** time the costs come from */
  years: number;
  horizonYears: number;
  seed: number;
  draws?: number;
  confidence?: number;
};

/**
 * What a set of prevention options saves, by seeded Monte Carlo.
 *
 * Per draw: cost per year of each cause ~ Gamma(S² / Q) × Q / S / years (counts of equal weight with the same variance), effect of
 * each option on each cause beta-PERT; options act on the same faults, so what is left is the product of (1 - effect).
 * Points are the expected values; the payback point is cost at the start / expected net saving. Effects of different options are drawn
 * independently; money is not discounted; the past is taken to go on without them.
 * Sources: Vose D. (2008) Risk Analysis, chapter 14, for PERT; Fay M.P. and Feuer E.J. (1997) for the gamma costs (from memory).
 *
 * @returns `no_cost` when no cause has a cost, `no_production` when `years` is 0
 */
export function simulateOptions(
  causes: readonly CauseCost[],
  options: readonly PreventionOption[],
  settings: WhatIfSettings,
): WhatIf | NotComputable {
  const { years, horizonYears, seed, draws = 4000, confidence = defaultConfidence } = settings;
  requireOptions(options);
  requireConfidence(confidence);
  if (!(years > 0)) return notComputable('no_production');
  const costs = causes.filter(({ sum, sumOfSquares }) => sum > 0 && sumOfSquares > 0);
  if (costs.length === 0) return notComputable('no_cost');
  const onceCost = options.reduce((sum, option) => sum + option.onceCost, 0);
  const yearlyCost = options.reduce((sum, option) => sum + option.yearlyCost, 0);

  const effectsOf = costs.map(({ cause }) =>
    options.flatMap(({ effects }) => effects.filter((effect) => effect.cause === cause)),
  );
  const random = seededRandom(seed);
  const saved = Float64Array.from({ length: draws }, () =>
    costs.reduce((sum, cost, i) => {
      const left = effectsOf[i]!.reduce((product, effect) => product * (1 - pertVariate(effect, random)), 1);
      return sum + (yearlyCostDraw(cost, random) / years) * (1 - left);
    }, 0),
  ).sort();
  const expected = costs.reduce(
    (sum, cost, i) =>
      sum + (cost.sum / years) * (1 - effectsOf[i]!.reduce((product, effect) => product * (1 - meanEffect(effect)), 1)),
    0,
  );

  const tail = (1 - confidence) / 2;
  const [low, high] = [sampleQuantile(saved, tail), sampleQuantile(saved, 1 - tail)];
  const pays = saved.reduce((count, saving) => count + (horizonYears * (saving - yearlyCost) >= onceCost ? 1 : 0), 0);
  return {
    savingPerYear: estimate(expected, { low, high, confidence }),
    netPerYear: estimate(expected - yearlyCost, { low: low - yearlyCost, high: high - yearlyCost, confidence }),
    onceCost,
    paybackYears: payback(onceCost, expected - yearlyCost, [low - yearlyCost, high - yearlyCost], confidence),
    probabilityPays: pays / draws,
    reason: null,
  };
}

const yearlyCostDraw = ({ sum, sumOfSquares }: CauseCost, random: Random): number =>
  gammaVariate((sum * sum) / sumOfSquares, random) * (sumOfSquares / sum);

/** `not_finite` when even the expected net saving is not above 0: then they never pay back. */
function payback(onceCost: number, net: number, [low, high]: [number, number], confidence: number): Estimate {
  if (!(net > 0) || !(high > 0)) return notComputable('not_finite');
  return estimate(onceCost / net, { low: onceCost / high, high: low > 0 ? onceCost / low : null, confidence });
}
