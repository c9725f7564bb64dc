import { describe, it } from 'vitest';
import { betaCdf, betaQuantile, betaUpperTail } from '#analysis/numeric/beta-distribution.ts';
import { chiSquareQuantile, gammaCdf, gammaQuantile } from '#analysis/numeric/gamma-distribution.ts';
import { normalUpperTail } from '#analysis/numeric/normal-distribution.ts';
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

  const large = reference<{ p: number; shape: number }, number>('added-gamma-large-shapes');
  it.each(large.cases)(`${large.title}: $input`, ({ input, expected }) => {
    expectRelative(gammaQuantile(input.p, input.shape), expected, 1e-11);
  });
});

describe('distribution functions', () => {
  type Input =
    | { of: 'beta' | 'beta upper'; x: number; a: number; b: number }
    | { of: 'gamma'; x: number; a: number }
    | { of: 'normal upper'; x: number };

  const probabilityOf = (input: Input): number => {
    if (input.of === 'gamma') return gammaCdf(input.x, input.a);
    if (input.of === 'normal upper') return normalUpperTail(input.x);
    return (input.of === 'beta' ? betaCdf : betaUpperTail)(input.x, input.a, input.b);
  };

  const { title, cases } = reference<Input, number>('added-distribution-functions');
  it.each(cases)(`${title}: $input`, ({ input, expected }) => expectRelative(probabilityOf(input), expected, 1e-8));
});
