import quantile from '@stdlib/stats-base-dists-beta-quantile';

/** Beta distribution quantile, both parameters > 0. From @stdlib, checked against scipy (reference `quantile-tails`). */
export const betaQuantile = (probability: number, a: number, b: number): number => quantile(probability, a, b);
