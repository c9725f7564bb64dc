import { expect, it } from 'vitest';
import { gammaQuantile, logGamma } from './gamma-distribution.ts';
import { poissonVariate } from './poisson-variate.ts';
import { seededRandom } from './random.ts';

it.each([0.3, 4, 9.9, 10, 35, 400])(
  'Poisson variates of mean %d agree with their masses (chi-square, 0.1 %%)',
  (mean) => {
    const random = seededRandom(12);
    const draws = 40_000;
    const seen = new Map<number, number>();
    for (let i = 0; i < draws; i++) {
      const count = poissonVariate(mean, random);
      seen.set(count, (seen.get(count) ?? 0) + 1);
    }
    let [chiSquare, cells, restSeen, restExpected] = [0, 0, draws, draws];
    for (let count = 0; count < mean + 12 * Math.sqrt(mean) + 12; count++) {
      const expected = draws * Math.exp(count * Math.log(mean) - mean - logGamma(count + 1));
      if (expected < 5) continue;
      chiSquare += ((seen.get(count) ?? 0) - expected) ** 2 / expected;
      cells += 1;
      restSeen -= seen.get(count) ?? 0;
      restExpected -= expected;
    }
    chiSquare += (restSeen - restExpected) ** 2 / restExpected;
    expect(chiSquare).toBeLessThan(2 * gammaQuantile(0.999, cells / 2));
  },
);
