import jstat from 'jstat';

/**
 * Gamma distribution with a shape (> 0) and scale 1, and the chi-square quantile that follows from it.
 * From jstat: checked against scipy up to shape 1e5 (reference `quantile-tails`), where other libraries drift.
 */
export const gammaQuantile = (probability: number, shape: number): number => jstat.gamma.inv(probability, shape, 1);

/** P(X <= x). */
export const gammaCdf = (x: number, shape: number): number => (x <= 0 ? 0 : jstat.lowRegGamma(shape, x));

/** log of the gamma function. */
export const logGamma = (x: number): number => jstat.gammaln(x);

export const chiSquareQuantile = (probability: number, degreesOfFreedom: number): number =>
  2 * gammaQuantile(probability, degreesOfFreedom / 2);
