import { describe, it } from 'vitest';
import { seededRandom } from '#analysis/numeric/random.ts';
import { meanEffect } from '#analysis/what-if/options.ts';
import { pertVariate } from '#analysis/what-if/pert-variate.ts';
import { expectAbsolute, expectRelative, reference } from './reference.ts';

describe('effects between least, likeliest and most', () => {
  type Range = [number, number, number];
  const { title, cases } = reference<Range, { mean: number; low: number; high: number }>('added-pert');
  it.each(cases)(`${title}: $input`, ({ input: [low, likely, high], expected }) => {
    const range = { low, likely, high };
    expectRelative(meanEffect({ cause: 'any', ...range }), expected.mean, 1e-9);
    const random = seededRandom(3);
    const draws = Float64Array.from({ length: 100_000 }, () => pertVariate(range, random)).sort();
    expectAbsolute(draws[2500]!, expected.low, 0.005);
    expectAbsolute(draws[97_500]!, expected.high, 0.005);
  });
});
