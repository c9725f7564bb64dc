import { describe, expect, it } from 'vitest';
import { seededRandom } from '../numeric/random.ts';
import { normalVariate } from '../numeric/variates.ts';
import { rateRatio } from '../rates/rate-ratio.ts';
import { compareSumsWithPrevious } from './compare-with-previous.ts';
import { type SummedExposure, sumRatio } from './sum-ratio.ts';

const equalCosts = (count: number, cost: number, exposure: number): SummedExposure => ({
  sum: count * cost,
  sumOfSquares: count * cost * cost,
  exposure,
});

describe('sumRatio', () => {
  it('has the interval of rateRatio when every report weighs the same', () => {
    const { interval } = sumRatio(equalCosts(24, 70, 1_200_000), equalCosts(9, 70, 1_150_000));
    const exact = rateRatio({ failures: 24, exposure: 1_200_000 }, { failures: 9, exposure: 1_150_000 }).interval!;
    expect(interval!.low).toBeCloseTo(exact.low, 9);
    expect(interval!.high).toBeCloseTo(exact.high!, 9);
  });

  it('excludes 1 exactly when the two-sided p is below alpha', () => {
    for (let count = 20; count <= 80; count++) {
      const { interval, p } = sumRatio(equalCosts(count, 3, 10), equalCosts(45, 2, 12));
      expect(interval!.low > 1 || interval!.high! < 1).toBe(p!.twoSided < 0.05);
    }
  });

  it('covers the true ratio about as often as it says for costs that vary log-normally', () => {
    const random = seededRandom(8);
    /** Reports arrive one by one over an exposure of 1, each with its own cost. */
    const period = (mean: number, medianCost: number): SummedExposure => {
      let [sum, sumOfSquares] = [0, 0];
      const wait = () => -Math.log(1 - random()) / mean;
      for (let time = wait(); time < 1; time += wait()) {
        const cost = medianCost * Math.exp(0.7 * normalVariate(random));
        sum += cost;
        sumOfSquares += cost * cost;
      }
      return { sum, sumOfSquares, exposure: 1 };
    };
    const rounds = 1000;
    let covered = 0;
    for (let round = 0; round < rounds; round++) {
      const { interval } = sumRatio(period(60, 200), period(40, 100));
      if (interval!.low <= 3 && 3 <= interval!.high!) covered += 1;
    }
    expect(covered / rounds).toBeGreaterThan(0.92);
    expect(covered / rounds).toBeLessThan(0.98);
  });

  it('says why it cannot be computed', () => {
    const some = equalCosts(3, 5, 10);
    const none = { sum: 0, sumOfSquares: 0, exposure: 10 };
    expect(sumRatio(some, { ...some, exposure: null }).reason).toBe('no_production');
    expect(sumRatio(none, none).reason).toBe('no_reports');
    expect(sumRatio({ ...some, sum: -1 }, some).reason).toBe('not_finite');
    expect(sumRatio(some, none)).toMatchObject({ value: null, interval: { high: null }, reason: 'not_finite' });
    expect(sumRatio(none, some)).toMatchObject({ value: 0, interval: { low: 0 }, reason: null });
  });
});

describe('compareSumsWithPrevious', () => {
  it('does not call one dear report a trend', () => {
    const [one, many] = compareSumsWithPrevious([
      {
        key: 'one dear report',
        now: { sum: 90_000, sumOfSquares: 90_000 ** 2, exposure: 1 },
        before: equalCosts(20, 1000, 1),
      },
      { key: 'many reports', now: equalCosts(90, 1000, 1), before: equalCosts(20, 1000, 1) },
    ]);
    expect(one!.verdict).toBe('not_beyond_noise');
    expect(many!.verdict).toBe('up');
  });
});
