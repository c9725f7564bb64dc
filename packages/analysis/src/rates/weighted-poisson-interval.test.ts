import { describe, expect, it } from 'vitest';
import { seededRandom } from '../numeric/random.ts';
import { poissonInterval } from './poisson-interval.ts';
import { type WeightedSum, weightedPoissonInterval } from './weighted-poisson-interval.ts';

/** Computed with scipy 1.17.1, scipy.stats.gamma.ppf, from the formulas of Fay and Feuer (1997): sum, squares, largest, limits. */
const computed: [number, number, number, number, number][] = [
  [1, 1, 1, 0.025317807984289876, 5.571643390938898],
  [12, 30, 4, 3.7818604571631456, 31.777249540676998],
  [250, 900, 20, 194.68135444768953, 345.11182038854224],
  [3, 9, 3, 0.07595342395286964, 16.714930172816693],
  [40_000, 200_000, 60, 39128.22279427998, 40949.17996022354],
];

describe('weightedPoissonInterval', () => {
  it.each(computed)('has the limits computed with scipy for a sum of %d, squares %d, largest %d', (...row) => {
    const [sum, sumOfSquares, largest, low, high] = row;
    const interval = weightedPoissonInterval({ sum, sumOfSquares, largest });
    expect(Math.abs(interval.low / low - 1)).toBeLessThan(1e-9);
    expect(Math.abs(interval.high / high - 1)).toBeLessThan(1e-9);
  });

  it.each([0, 1, 2, 7, 31, 400])('is Garwood’s for %d reports of one terminal each', (count) => {
    expect(weightedPoissonInterval({ sum: count, sumOfSquares: count, largest: 1 })).toEqual(poissonInterval(count));
  });

  it('covers the mean at least as often as it says when reports hold several terminals', () => {
    const random = seededRandom(3);
    const sizes = [1, 1, 1, 1, 2, 3, 8];
    const mean = 25;
    const wait = () => -Math.log(1 - random()) / mean;
    const expected = (mean * sizes.reduce((sum, size) => sum + size, 0)) / sizes.length;
    let covered = 0;
    const rounds = 4000;
    for (let round = 0; round < rounds; round++) {
      const total: WeightedSum = { sum: 0, sumOfSquares: 0, largest: 0 };
      for (let time = wait(); time < 1; time += wait()) {
        const size = sizes[Math.floor(random() * sizes.length)]!;
        total.sum += size;
        total.sumOfSquares += size * size;
        total.largest = Math.max(total.largest, size);
      }
      const { low, high } = weightedPoissonInterval(total);
      if (low <= expected && expected <= high) covered += 1;
    }
    expect(covered / rounds).toBeGreaterThan(0.945);
  });

  it('takes normal limits for a net credit', () => {
    const { low, high } = weightedPoissonInterval({ sum: -10, sumOfSquares: 100, largest: 0 });
    expect(low).toBeCloseTo(-10 - 19.599639845, 6);
    expect(high).toBeCloseTo(-10 + 19.599639845, 6);
  });
});
