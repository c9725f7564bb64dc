import incompleteBeta from '@stdlib/math-base-special-betainc';
import quantile from '@stdlib/stats-base-dists-beta-quantile';

/** Beta distribution, both parameters > 0. From @stdlib, checked against scipy (reference `quantile-tails`). */
export const betaQuantile = (probability: number, a: number, b: number): number => quantile(probability, a, b);

/** P(X <= x). */
export const betaCdf = (x: number, a: number, b: number): number => incompleteBeta(x, a, b);

/** P(X > x), exact in a far tail too. */
export const betaUpperTail = (x: number, a: number, b: number): number => incompleteBeta(x, a, b, true, true);
