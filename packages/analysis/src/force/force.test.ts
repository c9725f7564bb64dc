import { describe, expect, it, vi } from 'vitest';
import { type Random, seededRandom } from '../numeric/random.ts';
import { normalVariate } from '../numeric/variates.ts';
import { judgeForces } from './judge-forces.ts';
import { runChart } from './run-chart.ts';

/** Simulations take as long as the machine needs. */
vi.setConfig({ testTimeout: 120_000 });

function judged(forces: number[], minimum: number) {
  const result = judgeForces(forces, minimum);
  if ('reason' in result) throw new Error(result.reason);
  return result;
}

const draw = (n: number, one: (random: Random) => number, seed: number): number[] => {
  const random = seededRandom(seed);
  return Array.from({ length: n }, () => one(random));
};

describe('judgeForces', () => {
  it('takes the normal bound, logarithms, or order statistics, as the values ask for', () => {
    const normal = draw(40, (random) => 64 + 4 * normalVariate(random), 3);
    expect(judged(normal, 45)).toMatchObject({ method: 'normal', meetsMinimum: true });
    const skew = draw(60, (random) => 60 * Math.exp(0.5 * normalVariate(random)), 3);
    expect(judged(skew, 45)).toMatchObject({ method: 'log_normal', meetsMinimum: false });
    const mixed = draw(80, (random) => (random() < 0.5 ? 40 : 80) + 2 * normalVariate(random), 3);
    const free = judged(mixed, 30);
    expect(free).toMatchObject({ method: 'order_statistic', meetsMinimum: true, bound: free.smallest });
    expect(free.capability.value).toBeNull();
    expect(judged(mixed.slice(0, 30), 30)).toMatchObject({ bound: null, needed: 59, meetsMinimum: null });
    expect(judged([60, 62, 61], 45)).toMatchObject({ method: 'normal_untested', normality: null });
  });

  it('holds 95 % of all terminals above the bound in 95 % of samples, and covers the fraction below', () => {
    const random = seededRandom(10);
    const rounds = 500;
    const truth = 0.0227501319;
    let [held, covered] = [0, 0];
    for (let round = 0; round < rounds; round++) {
      const { bound, below, method } = judged(
        Array.from({ length: 7 }, () => normalVariate(random) + 50),
        48,
      );
      expect(method).toBe('normal_untested');
      if (bound! <= 50 - 1.6448536) held += 1;
      if (below.interval!.low <= truth && truth <= below.interval!.high!) covered += 1;
    }
    const slack = 3 * Math.sqrt((0.05 * 0.95) / rounds);
    expect(Math.abs(held / rounds - 0.95)).toBeLessThan(slack);
    expect(Math.abs(covered / rounds - 0.95)).toBeLessThan(slack);
  });

  it('counts what fails the minimum outright and says why there is no judgement', () => {
    expect(judged([44, 60, 61, 62], 45)).toMatchObject({ belowInSample: 1, smallest: 44, meetsMinimum: false });
    expect(judgeForces([60], 45)).toMatchObject({ reason: 'too_few' });
    expect(judgeForces([60, 60], 45)).toMatchObject({ reason: 'not_finite' });
    expect(() => judgeForces([60, 0], 45)).toThrow(RangeError);
  });
});

describe('runChart', () => {
  it('sees a drift and an alternation, and nothing in equal values', () => {
    expect(runChart([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])!).toMatchObject({ runs: 2, longestRun: 5, median: 5.5 });
    expect(runChart([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])!.pFewer).toBeLessThan(0.01);
    expect(runChart([1, 9, 2, 8, 3, 7, 1, 9, 2, 8])!.pMore).toBeLessThan(0.01);
    expect(runChart([5, 5, 5])).toBeNull();
  });
});
