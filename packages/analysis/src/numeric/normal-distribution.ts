import jstat from 'jstat';

/** Standard normal quantile. */
export const normalQuantile = (probability: number): number => jstat.normal.inv(probability, 0, 1);

/** Standard normal P(Z > z). */
export const normalUpperTail = (z: number): number => 0.5 * jstat.erfc(z / Math.SQRT2);
