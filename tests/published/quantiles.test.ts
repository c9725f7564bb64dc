import { describe, it } from 'vitest';
import { betaQuantile } from '#analysis/numeric/beta-distribution.ts';
import { chiSquareQuantile, gammaQuantile } from '#analysis/numeric/gamma-distribution.ts';
import { expectRelative, reference } from './reference.ts';

describe('distribution quantiles', () => {
  type Input =
    | { dist: 'beta'; p: number; a: number; b: number }
    | { dist: 'gamma'; p: number; shape: number }
    | { dist: 'chi2'; p: number; df: number };

  const quantileOf = (input: Input): number => {
    if (input.dist === 'beta') return betaQuantile(input.p, input.a, input.b);
    return input.dist === 'gamma' ? gammaQuantile(input.p, input.shape) : chiSquareQuantile(input.p, input.df);
  };

  const { title, cases } = reference<Input, number>('quantile-tails');
  it.each(cases)(`${title}: $input`, ({ input, expected }) => expectRelative(quantileOf(input), expected, 1e-9));
});
