import { logGamma } from './gamma-distribution.ts';
import type { Random } from './random.ts';

/**
 * Poisson variate. Below a mean of 10 by counting exponential waits, above it by transformed rejection.
 * Source: Hörmann W. (1993) Insurance: Mathematics and Economics 12:39-45, PTRS (constants from memory, distribution tested).
 *
 * @param mean 0 or more
 */
export function poissonVariate(mean: number, random: Random): number {
  if (mean < 10) {
    const stop = Math.exp(-mean);
    let count = 0;
    for (let product = 1 - random(); product > stop; product *= 1 - random()) count += 1;
    return count;
  }
  const b = 0.931 + 2.53 * Math.sqrt(mean);
  const a = -0.059 + 0.02483 * b;
  const logInverse = Math.log(1.1239 + 1.1328 / (b - 3.4));
  const quick = 0.9277 - 3.6224 / (b - 2);
  for (;;) {
    const u = random() - 0.5;
    const v = 1 - random();
    const us = 0.5 - Math.abs(u);
    const count = Math.floor(((2 * a) / us + b) * u + mean + 0.43);
    if (us >= 0.07 && v <= quick) return count;
    if (count < 0 || (us < 0.013 && v > us)) continue;
    const log = Math.log(v) + logInverse - Math.log(a / (us * us) + b);
    if (log <= count * Math.log(mean) - mean - logGamma(count + 1)) return count;
  }
}
