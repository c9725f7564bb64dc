/** Skewed choices, the same in every run: a few parts and tools make most of the failures. */
import { type Random, seededRandom } from '#analysis/numeric/random.ts';

export type { Random };
export const seeded = seededRandom;

/** Chooses place i with a weight of 1 / (i + 1) ^ skew. */
export function skewed(count: number, skew: number): (random: Random) => number {
  const limits = new Float64Array(count);
  let sum = 0;
  for (let i = 0; i < count; i++) {
    sum += 1 / (i + 1) ** skew;
    limits[i] = sum;
  }
  return (random) => {
    const aim = random() * sum;
    let low = 0;
    let high = count - 1;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if (limits[middle]! < aim) low = middle + 1;
      else high = middle;
    }
    return low;
  };
}
