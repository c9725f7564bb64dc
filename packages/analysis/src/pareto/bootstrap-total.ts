import type { Random } from '../numeric/random.ts';
import { gammaVariate, normalVariate } from '../numeric/variates.ts';

/** What SQL supplies per bar: the sum of an amount over its reports, and the sum of its squares. */
export type SumStatistics = { sum: number; sumOfSquares: number };

/**
 * One draw of a bar's total as a report-level Poisson bootstrap would give it, from two sums instead of every report.
 *
 * Giving each report a weight ~ Poisson(1) makes a bar's total vary with mean = sum and variance = sum of squares, exactly,
 * and bars vary independently. The draw is a gamma variate with these two moments (shape sum²/sumOfSquares): never
 * negative, skewed to the right like the bootstrap itself, and for equal amounts the same as the Dirichlet posterior with
 * prior 0. A total that is a net credit is drawn from a normal with the same moments.
 * Sources (from memory): Hanley J.A. and MacGibbon B. (2006) Comput. Methods Programs Biomed. 83:57-62 for Poisson weights;
 * Fay M.P. and Feuer E.J. (1997) Statistics in Medicine 16:791-801 for the gamma with matched moments.
 */
export function bootstrapTotal({ sum, sumOfSquares }: SumStatistics, random: Random): number {
  if (sumOfSquares === 0) return sum;
  if (sum <= 0) return sum + Math.sqrt(sumOfSquares) * normalVariate(random);
  return (sumOfSquares / sum) * gammaVariate((sum * sum) / sumOfSquares, random);
}
