import { describe, expect, it } from 'vitest';
import { seededRandom } from '../numeric/random.ts';
import { normalVariate } from '../numeric/variates.ts';
import type { SumStatistics } from './bootstrap-total.ts';
import { sumShareIntervals } from './sum-share-intervals.ts';
import { topFrequencies } from './top-k.ts';
import { topProbabilities } from './top-probabilities.ts';
import { topSumProbabilities } from './top-sum-probabilities.ts';

/** Three bars of log-normal amounts: many cheap reports, some middling, few dear ones. */
function reportsPerBar(): number[][] {
  const random = seededRandom(3);
  const bar = (count: number, median: number, spread: number): number[] =>
    Array.from({ length: count }, () => Math.round(median * Math.exp(spread * normalVariate(random))));
  return [bar(400, 1000, 0.5), bar(60, 6000, 0.8), bar(12, 30_000, 1)];
}

const statistics = (amounts: number[]): SumStatistics => ({
  sum: amounts.reduce((sum, amount) => sum + amount, 0),
  sumOfSquares: amounts.reduce((sum, amount) => sum + amount * amount, 0),
});

describe('bootstrap from sums against a bootstrap of every report', () => {
  const bars = reportsPerBar();
  const draws = 4000;

  /** Resamples reports with replacement over all bars, the classical bootstrap. */
  function resampled(): number[][] {
    const random = seededRandom(11);
    const reports = bars.flatMap((amounts, bar) => amounts.map((amount) => ({ bar, amount })));
    return Array.from({ length: draws }, () => {
      const totals = bars.map(() => 0);
      for (let i = 0; i < reports.length; i++) {
        const report = reports[Math.floor(random() * reports.length)]!;
        totals[report.bar]! += report.amount;
      }
      return totals;
    });
  }

  it('gives nearly the same top-k probabilities', () => {
    const samples = resampled();
    for (const k of [1, 2]) {
      let next = 0;
      const expected = topFrequencies(bars.length, k, draws, (values) => values.set(samples[next++]!));
      const actual = topSumProbabilities(bars.map(statistics), { k, seed: 5, draws });
      actual.forEach((probability, bar) => {
        expect(Math.abs(probability - expected[bar]!)).toBeLessThan(0.04);
      });
    }
  });

  it('gives nearly the same spread of shares', () => {
    const shares = resampled().map((totals) => totals.map((total) => total / totals.reduce((sum, t) => sum + t, 0)));
    const bands = sumShareIntervals(bars.map(statistics), { seed: 5, draws })!;
    const inside = shares.filter((row) =>
      row.every((share, bar) => share >= bands[bar]!.low && share <= bands[bar]!.high),
    );
    expect(inside.length / draws).toBeGreaterThan(0.93);
    expect(inside.length / draws).toBeLessThan(0.97);
  });

  it('is the posterior with prior 0 when every report weighs the same', () => {
    const counts = [30, 25, 10, 5];
    const sums = counts.map((count) => ({ sum: 40 * count, sumOfSquares: 1600 * count }));
    const byCount = topProbabilities(counts, { k: 2, seed: 9, prior: 0 });
    expect(topSumProbabilities(sums, { k: 2, seed: 9 })).toEqual(byCount);
  });

  it('gives no shares of nothing and none beside a net credit', () => {
    expect(sumShareIntervals([{ sum: 0, sumOfSquares: 0 }], { seed: 1 })).toBeNull();
    expect(
      sumShareIntervals(
        [
          { sum: 5, sumOfSquares: 25 },
          { sum: -1, sumOfSquares: 1 },
        ],
        { seed: 1 },
      ),
    ).toBeNull();
  });
});

describe('top-k over very many bars', () => {
  it('draws only contenders and adds up to k', () => {
    const counts = [5000, 4900, 4800, ...Array.from({ length: 5000 }, (_, i) => i % 40)];
    const probabilities = topProbabilities(counts, { k: 2, seed: 1 });
    expect(probabilities.reduce((sum, p) => sum + p, 0)).toBeCloseTo(2, 10);
    expect(Math.max(...probabilities.slice(3))).toBe(0);
  });

  it('refuses a k below 1', () => {
    expect(() => topProbabilities([1, 2], { k: 0, seed: 1 })).toThrow(RangeError);
  });
});
