import { describe, expect, it } from 'vitest';
import { gammaCdf, logGamma } from '#analysis/numeric/gamma-distribution.ts';
import { goodmanIntervals } from '#analysis/pareto/goodman-intervals.ts';
import { topProbabilities } from '#analysis/pareto/top-probabilities.ts';
import { expectAbsolute, expectRelative, reference } from './reference.ts';

describe('simultaneous multinomial intervals', () => {
  type Input = { counts: number[]; alpha: number };
  type Expected = { goodman: [number, number][] };
  for (const id of ['5-multinomial-56_72_73_59_62_87_58', '5-multinomial-20_10_5_3_2']) {
    const { title, input, expected } = reference<Input, Expected>(id);
    it(title, () => {
      goodmanIntervals(input.counts, 1 - input.alpha).forEach(({ low, high }, bar) => {
        expectRelative(low, expected.goodman[bar]![0]);
        expectRelative(high, expected.goodman[bar]![1]);
      });
    });
  }
});

/** Integral over x of gamma density(shape i) times the product of the other gamma cdfs, by Simpson's rule in log x. */
function exactTop(shapes: number[], bar: number): number {
  const [from, to, steps] = [Math.log(1e-3), Math.log(200), 4000];
  const width = (to - from) / steps;
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const x = Math.exp(from + i * width);
    const shape = shapes[bar]!;
    const density = Math.exp(shape * Math.log(x) - x - logGamma(shape));
    const below = shapes.reduce((product, other, place) => (place === bar ? product : product * gammaCdf(x, other)), 1);
    sum += density * below * (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2);
  }
  return (sum * width) / 3;
}

describe('probability of the top place', () => {
  const draws = 40_000;
  const check = (counts: number[], prior: number, expected: number[]): void => {
    const simulated = topProbabilities(counts, { k: 1, seed: 7, draws, prior });
    const shapes = counts.map((count) => count + prior);
    expected.forEach((probability, bar) => {
      expectAbsolute(exactTop(shapes, bar), probability, 1e-8);
      expectAbsolute(simulated[bar]!, probability, 4 * Math.sqrt((probability * (1 - probability)) / draws) + 1e-4);
    });
  };

  type Expected = { prior1: number[]; 'prior0.5': number[] };
  const four = reference<{ counts: number[] }, Expected>('5-dirichlet-top');
  it(`${four.title}: prior 1`, () => check(four.input.counts, 1, four.expected.prior1));
  it(`${four.title}: prior 0.5`, () => check(four.input.counts, 0.5, four.expected['prior0.5']));

  const five = reference<{ counts: number[]; prior: number }, number[]>('5-dirichlet-top-b');
  it(five.title, () => check(five.input.counts, five.input.prior, five.expected));

  it('gives the same figures for the same seed, and others for another', () => {
    const once = topProbabilities([30, 25, 10, 5], { k: 2, seed: 1 });
    expect(topProbabilities([30, 25, 10, 5], { k: 2, seed: 1 })).toEqual(once);
    expect(topProbabilities([30, 25, 10, 5], { k: 2, seed: 2 })).not.toEqual(once);
  });
});
