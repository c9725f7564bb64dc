import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pareto } from './pareto.ts';

const bars = fc.uniqueArray(fc.record({ key: fc.string(), value: fc.nat(1_000_000) }), { selector: (bar) => bar.key });

describe('pareto', () => {
  it('ranks, shares a rank among equals, and adds up shares', () => {
    const result = pareto([
      { key: 'b', value: 20 },
      { key: 'a', value: 20 },
      { key: 'c', value: 60 },
    ]);
    expect(result.bars.map(({ key, rank, cumulativeShare }) => [key, rank, cumulativeShare])).toEqual([
      ['c', 1, 0.6],
      ['a', 2, 0.8],
      ['b', 2, 1],
    ]);
  });

  it('keeps the total when bars are put together as other', () => {
    fc.assert(
      fc.property(bars, fc.nat(20), (all, show) => {
        const { total, bars: shown, other } = pareto(all, { show });
        expect(shown.reduce((sum, bar) => sum + bar.value, 0) + (other?.value ?? 0)).toBe(total);
        expect(shown.length + (other?.bars ?? 0)).toBe(all.length);
      }),
    );
  });

  it('does not depend on the order of the bars', () => {
    fc.assert(
      fc.property(bars, (all) => {
        expect(pareto(all.toReversed())).toEqual(pareto(all));
      }),
    );
  });

  it('gives no share of nothing, nor beside a net credit', () => {
    expect(pareto([{ key: 'a', value: 0 }]).bars[0]!.share).toBeNull();
    expect(
      pareto([
        { key: 'a', value: 5 },
        { key: 'b', value: -1 },
      ]).bars[0]!.share,
    ).toBeNull();
    expect(pareto([])).toEqual({ total: 0, bars: [], other: null });
  });
});
