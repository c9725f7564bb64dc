import jstat from 'jstat';

/**
 * Gamma distribution with a shape (> 0) and scale 1, and the chi-square quantile that follows from it.
 * From jstat: checked against scipy up to shape 1e5 (reference `quantile-tails`), where other libraries drift. Its time grows
 * with the shape, so large shapes take the Cornish-Fisher expansion, which is closer than 1e-11 there.
 */
export const gammaQuantile = (probability: number, shape: number): number =>
  shape < largeShape ? jstat.gamma.inv(probability, shape, 1) : expandedQuantile(probability, shape);

const largeShape = 20_000;

/** Source: Goldberg H. and Levine H. (1946) Annals of Mathematical Statistics 17:216-225, chi-square form (from memory). */
function expandedQuantile(probability: number, shape: number): number {
  const z = jstat.normal.inv(probability, 0, 1);
  const root = Math.sqrt(shape);
  return (
    shape +
    root * z +
    (z ** 2 - 1) / 3 +
    (z ** 3 - 7 * z) / (36 * root) -
    (3 * z ** 4 + 7 * z ** 2 - 16) / (810 * shape) +
    (9 * z ** 5 + 256 * z ** 3 - 433 * z) / (38_880 * shape * root)
  );
}

/** P(X <= x). */
export const gammaCdf = (x: number, shape: number): number => (x <= 0 ? 0 : jstat.lowRegGamma(shape, x));

/** log of the gamma function. */
export const logGamma = (x: number): number => jstat.gammaln(x);

export const chiSquareQuantile = (probability: number, degreesOfFreedom: number): number =>
  2 * gammaQuantile(probability, degreesOfFreedom / 2);
