import { hash } from 'node:crypto';
import { type Random, seededRandom } from '#analysis/numeric/random.ts';
import { gammaVariate, normalVariate } from '#analysis/numeric/variates.ts';

/** Whole numbers that depend on the text alone. */
export const hashOf = (text: string): number => hash('sha256', text, 'buffer').readInt32LE(0);

export type Weights<Item extends string> = Partial<Record<Item, number>>;

/** A stream of random values of its own name, so that drawing more from one part of the scenario changes no other. */
export class Dice {
  readonly next: Random;

  constructor(seed: number, stream: string) {
    this.next = seededRandom(hashOf(`${seed} ${stream}`));
  }

  chance(probability: number): boolean {
    return this.next() < probability;
  }

  /** A whole number from `low` to `high`, both included. */
  whole(low: number, high: number): number {
    return low + Math.floor(this.next() * (high - low + 1));
  }

  pick<Item>(items: readonly Item[]): Item {
    return items[this.whole(0, items.length - 1)]!;
  }

  weighted<Item extends string>(weights: Weights<Item>): Item {
    const entries = Object.entries(weights) as [Item, number][];
    let rest = this.next() * entries.reduce((sum, [, weight]) => sum + weight, 0);
    for (const [item, weight] of entries) {
      rest -= weight;
      if (rest < 0) return item;
    }
    return entries.at(-1)![0];
  }

  /** Poisson count by multiplying uniforms (Knuth), for the small means of one line and day. */
  poisson(mean: number): number {
    if (mean > 30) return this.poisson(mean / 2) + this.poisson(mean / 2);
    const limit = Math.exp(-mean);
    let count = 0;
    for (let product = this.next(); product > limit; product *= this.next()) count += 1;
    return count;
  }

  exponential(mean: number): number {
    return -mean * Math.log(1 - this.next());
  }

  gamma(shape: number, mean: number): number {
    return (gammaVariate(shape, this.next) * mean) / shape;
  }

  weibull(shape: number, scale: number): number {
    return scale * (-Math.log(1 - this.next())) ** (1 / shape);
  }

  /** Spread around a median: sigma is the standard deviation of the natural logarithm. */
  logNormal(median: number, sigma: number): number {
    return median * Math.exp(sigma * normalVariate(this.next));
  }
}
