import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { avoidableCost, firstAbleGate } from './avoidable-cost.ts';

describe('firstAbleGate', () => {
  it('is the first stage that exists, is not before the origin and can see the fault', () => {
    expect(firstAbleGate({ origin: 4, visibleFrom: 5 })).toBe(5);
    expect(firstAbleGate({ origin: 7, visibleFrom: 5 })).toBe(7);
    expect(firstAbleGate({ origin: 4, visibleFrom: 5 }, [2, 4, 6, 10])).toBe(6);
    expect(firstAbleGate({ origin: 8, visibleFrom: null }, [2, 4, 6])).toBeNull();
  });
});

describe('avoidableCost', () => {
  const late = { found: 10, firstGate: 5, terminals: 2, minor: 90_000, minorPerTerminalAtFirstGate: 500 };

  it('is the cost where found less the cost at the first able gate', () => {
    // 90 000 - 2 × 500; the second row was found at its first gate
    const result = avoidableCost([late, { ...late, found: 5, minor: 700 }]);
    expect(result).toEqual({ minor: 89_000, reason: null, withoutStandardCost: { terminals: 0, minor: 0 } });
  });

  it('names what has no standard cost instead of guessing it', () => {
    const without = { ...late, minorPerTerminalAtFirstGate: null };
    expect(avoidableCost([late, without]).withoutStandardCost).toEqual({ terminals: 2, minor: 90_000 });
    expect(avoidableCost([without])).toMatchObject({ minor: null, reason: 'no_standard_cost' });
    expect(avoidableCost([])).toMatchObject({ minor: null, reason: 'no_reports' });
  });

  it('adds up over any split', () => {
    const row = fc.record({
      found: fc.integer({ min: 1, max: 10 }),
      firstGate: fc.integer({ min: 1, max: 10 }),
      terminals: fc.nat(100),
      minor: fc.nat(1_000_000),
      minorPerTerminalAtFirstGate: fc.nat(10_000),
    });
    fc.assert(
      fc.property(fc.array(row), fc.array(row), (left, right) => {
        const minor = (rows: typeof left) => avoidableCost(rows).minor ?? 0;
        expect(minor(left) + minor(right)).toBe(minor([...left, ...right]));
      }),
    );
  });
});
