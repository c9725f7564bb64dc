import { describe, expect, it } from 'vitest';
import { gammaCdf } from './gamma-distribution.ts';
import { normalUpperTail } from './normal-distribution.ts';
import { seededRandom } from './random.ts';
import { sampleQuantile } from './sample-quantile.ts';
import { simultaneousBands } from './simultaneous-bands.ts';
import { gammaVariate, normalVariate } from './variates.ts';

/** Largest distance between a sample's distribution and a cdf, times sqrt(n): above 1.95 once in 1000 (Kolmogorov's limit). */
function kolmogorov(sample: Float64Array, cdf: (x: number) => number): number {
  const n = sample.length;
  const distances = sample.toSorted().map((x, i) => Math.max((i + 1) / n - cdf(x), cdf(x) - i / n));
  return Math.sqrt(n) * Math.max(...distances);
}

describe('variates follow their distribution', () => {
  const n = 5000;

  it.each([0.05, 0.5, 1, 3.7, 400])('gamma with shape %d', (shape) => {
    const random = seededRandom(21);
    const sample = Float64Array.from({ length: n }, () => gammaVariate(shape, random));
    expect(kolmogorov(sample, (x) => gammaCdf(x, shape))).toBeLessThan(1.95);
  });

  it('normal', () => {
    const random = seededRandom(22);
    const sample = Float64Array.from({ length: n }, () => normalVariate(random));
    expect(kolmogorov(sample, (x) => normalUpperTail(-x))).toBeLessThan(1.95);
  });
});

describe('seededRandom', () => {
  it('repeats itself for a seed, stays in [0, 1), and differs between neighbouring seeds', () => {
    const first = (seed: number): number[] => Array.from({ length: 100 }, seededRandom(seed));
    expect(first(5)).toEqual(first(5));
    expect(first(5)).not.toEqual(first(6));
    expect(first(5).every((value) => value >= 0 && value < 1)).toBe(true);
  });
});

describe('sampleQuantile', () => {
  it('is linear between order statistics', () => {
    const sorted = Float64Array.of(1, 2, 4, 8);
    expect([0, 0.5, 0.75, 1].map((p) => sampleQuantile(sorted, p))).toEqual([1, 3, 5, 8]);
  });
});

describe('simultaneousBands', () => {
  it('hold the wanted fraction of joint draws, and are wider than one quantity alone needs', () => {
    const random = seededRandom(23);
    const draws = Array.from({ length: 10 }, () => Float64Array.from({ length: 2000 }, () => gammaVariate(2, random)));
    const bands = simultaneousBands(draws, 0.95);
    const inside = Array.from({ length: 2000 }, (_, i) =>
      draws.every((values, quantity) => values[i]! >= bands[quantity]!.low && values[i]! <= bands[quantity]!.high),
    ).filter(Boolean).length;
    expect(inside / 2000).toBeGreaterThanOrEqual(0.95);
    expect(inside / 2000).toBeLessThan(0.97);
    expect(bands[0]!.high).toBeGreaterThan(sampleQuantile(draws[0]!.toSorted(), 0.975));
  });

  it('take a quantity that never varies for what it is', () => {
    expect(simultaneousBands([new Float64Array(100).fill(0)], 0.95)).toEqual([{ low: 0, high: 0 }]);
  });
});
