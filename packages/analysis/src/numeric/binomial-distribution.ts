import type { DiscreteDistribution } from './exact-test.ts';
import { logGamma } from './gamma-distribution.ts';

/** Binomial(trials, probability) with 0 < probability < 1. */
export const binomial = (trials: number, probability: number): DiscreteDistribution => ({
  low: 0,
  high: trials,
  mode: Math.min(trials, Math.floor((trials + 1) * probability)),
  logMass: (events) =>
    logGamma(trials + 1) -
    logGamma(events + 1) -
    logGamma(trials - events + 1) +
    events * Math.log(probability) +
    (trials - events) * Math.log1p(-probability),
  ratio: (events) => ((trials - events) / (events + 1)) * (probability / (1 - probability)),
});
