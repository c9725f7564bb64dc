import { describe, expect, it } from 'vitest';
import { seededRandom } from '#analysis/numeric/random.ts';
import { gammaVariate } from '#analysis/numeric/variates.ts';
import { fitGammaPrior } from '#analysis/shrinkage/fit-gamma-prior.ts';
import { shrunkRatio } from '#analysis/shrinkage/shrunk-ratio.ts';
import { expectRelative, reference } from './reference.ts';

describe('shrunk ratio of observed to expected', () => {
  type Prior = { a1: number; b1: number; a2: number; b2: number; P: string };
  type Expected = Record<string, { Qn: number; EBGM: number; EB05: number; EB95: number }>;
  const { title, input, expected } = reference<{ prior: Prior; 'N,E': [number, number][] }, Expected>('11-ebgm');
  const { a1, b1, a2, b2 } = input.prior;
  const prior = [
    { weight: 1 / 3, shape: a1, rate: b1 },
    { weight: 2 / 3, shape: a2, rate: b2 },
  ];
  const rows = Object.values(expected);
  it.each(input['N,E'].map(([N, E], place) => ({ N, E, row: rows[place]! })))(`${title}: $N of $E`, ({ N, E, row }) => {
    const { geometricMean, interval, posterior } = shrunkRatio({ observed: N, expected: E }, prior, 0.9);
    expectRelative(posterior[0]!.weight, row.Qn);
    expectRelative(geometricMean, row.EBGM);
    expectRelative(interval.low, row.EB05);
    expectRelative(interval.high, row.EB95);
  });
});

describe('gamma prior of many combinations', () => {
  type Input = { observed: number[]; expected: number[] };
  const { title, cases } = reference<Input, { shape: number; rate: number }>('added-gamma-prior');
  it.each(cases)(title, ({ input, expected }) => {
    const fit = fitGammaPrior(input.observed.map((observed, i) => ({ observed, expected: input.expected[i]! })))!;
    expectRelative(fit.shape, expected.shape, 1e-4);
    expectRelative(fit.rate, expected.rate, 1e-4);
  });

  it('finds the prior that generated the counts', () => {
    const random = seededRandom(41);
    const poisson = (mean: number): number => {
      const wait = () => -Math.log(1 - random());
      let count = 0;
      for (let time = wait(); time < mean; time += wait()) count += 1;
      return count;
    };
    const combinations = Array.from({ length: 3000 }, () => {
      const expected = 0.5 + 9 * random();
      return { observed: poisson((expected * gammaVariate(3, random)) / 2.5), expected };
    });
    const { shape, rate } = fitGammaPrior(combinations)!;
    expect(Math.abs(shape - 3)).toBeLessThan(0.4);
    expect(Math.abs(shape / rate - 3 / 2.5)).toBeLessThan(0.06);
  });

  it('has nothing to learn from one combination or from no failure', () => {
    expect(fitGammaPrior([{ observed: 3, expected: 2 }])).toBeNull();
    expect(
      fitGammaPrior([
        { observed: 0, expected: 2 },
        { observed: 0, expected: 1 },
      ]),
    ).toBeNull();
  });
});
