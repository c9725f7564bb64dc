import { describe, expect, it } from 'vitest';
import { seededRandom } from '../numeric/random.ts';
import { normalVariate } from '../numeric/variates.ts';
import { poissonInterval } from './poisson-interval.ts';
import { type WeightedSum, weightedPoissonInterval } from './weighted-poisson-interval.ts';

describe('weightedPoissonInterval', () => {
  it.each([0, 1, 7, 300])('is Garwood’s for %i reports of equal weight', (count) => {
    const limits = weightedPoissonInterval({ sum: 5 * count, sumOfSquares: 25 * count, largest: 5 });
    const { low, high } = poissonInterval(count);
    expect(limits.low).toBeCloseTo(5 * low, 8);
    expect(limits.high).toBeCloseTo(5 * high, 8);
  });

  it('covers the true mean at least about as often as it says for reports of unequal weight', () => {
    const random = seededRandom(31);
    const total = (mean: number): WeightedSum => {
      const sums = { sum: 0, sumOfSquares: 0, largest: 0 };
      const wait = () => -Math.log(1 - random()) / mean;
      for (let time = wait(); time < 1; time += wait()) {
        const weight = Math.exp(0.6 * normalVariate(random));
        sums.sum += weight;
        sums.sumOfSquares += weight * weight;
        sums.largest = Math.max(sums.largest, weight);
      }
      return sums;
    };
    const [mean, rounds] = [25, 2000];
    const truth = mean * Math.exp(0.6 ** 2 / 2);
    let covered = 0;
    for (let round = 0; round < rounds; round++) {
      const { low, high } = weightedPoissonInterval(total(mean));
      if (low <= truth && truth <= high) covered += 1;
    }
    expect(covered / rounds).toBeGreaterThan(0.94);
  });

  it('gives limits of both signs around a net credit', () => {
    const { low, high } = weightedPoissonInterval({ sum: -10, sumOfSquares: 400, largest: 5 });
    expect([low < -10, high > 0]).toEqual([true, true]);
  });
});
