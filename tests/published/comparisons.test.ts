import { describe, expect, it } from 'vitest';
import { benjaminiHochberg } from '#analysis/comparisons/benjamini-hochberg.ts';
import { fisherTest } from '#analysis/comparisons/fisher-test.ts';
import { expectRelative, reference } from './reference.ts';

describe('false discovery rate', () => {
  type Expected = { BH_rejections: number; BH_adjusted: number[] };
  const { title, input, expected } = reference<{ p: number[]; q: number }, Expected>('11-bh-1995');
  it(title, () => {
    const adjusted = benjaminiHochberg(input.p);
    adjusted.forEach((p, place) => {
      expectRelative(p, expected.BH_adjusted[place]!);
    });
    expect(adjusted.filter((p) => p <= input.q)).toHaveLength(expected.BH_rejections);
  });
  it(`${title}: the order of the tests does not matter`, () => {
    expect(benjaminiHochberg(input.p.toReversed())).toEqual(benjaminiHochberg(input.p).toReversed());
  });
});

describe('exact test of a 2 × 2 table', () => {
  type Table = [[number, number], [number, number]];
  type Expected = { p_two_sided: number; p_greater: number; ci95: [number, number] };
  const { title, input, expected } = reference<{ table: Table }, Expected>('2-fisher-tea');
  it(title, () => {
    const { p, interval, oddsRatio } = fisherTest(input.table);
    expectRelative(p.twoSided, expected.p_two_sided);
    expectRelative(p.greater, expected.p_greater);
    // R's root finder stops early (621.9 where the root is 626.2); `added-fisher-interval` holds the limits to 1e-6.
    expectRelative(interval.low, expected.ci95[0], 1e-2);
    expectRelative(interval.high, expected.ci95[1], 1e-2);
    expect(oddsRatio).toBe(9);
  });

  const limits = reference<Table, { low: number; high: number | null; p: number }>('added-fisher-interval');
  it.each(limits.cases)(`${limits.title}: $input`, ({ input: cells, expected: limit }) => {
    const { p, interval } = fisherTest(cells);
    expectRelative(p.twoSided, limit.p);
    expectRelative(interval.low, limit.low);
    if (limit.high === null) expect(interval.high).toBeNull();
    else expectRelative(interval.high, limit.high);
  });
});
