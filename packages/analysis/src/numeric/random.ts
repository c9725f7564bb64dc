import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Uniform numbers in [0, 1). */
export type Random = () => number;

/** The same seed gives the same numbers: xoroshiro128+ (Blackman D. and Vigna S. 2018) from pure-rand, 53 bits a number. */
export function seededRandom(seed: number): Random {
  const generator = xoroshiro128plus(seed);
  return () => uniformFloat64(generator);
}
