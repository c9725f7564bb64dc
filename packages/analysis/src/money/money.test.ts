import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allocate, displayParts, roundedMinor } from './allocate.ts';
import { convertExactly, convertTotal, factorAsOf } from './convert.ts';
import { rateAsOf } from './exchange-rates.ts';
import { fraction, sumFractions } from './fraction.ts';

const rates = [
  { from: 'JPY', to: 'EUR', day: '2026-01-05', rate: '0.006123' },
  { from: 'JPY', to: 'EUR', day: '2026-02-02', rate: '0.00619' },
  { from: 'MXN', to: 'EUR', day: '2026-01-05', rate: '0.0481' },
  { from: 'KWD', to: 'EUR', day: '2026-01-05', rate: '3.0127' },
];

describe('rateAsOf', () => {
  it('is the latest rate dated that day or before', () => {
    expect(rateAsOf(rates, 'JPY', 'EUR', '2026-02-01')!.rate).toBe('0.006123');
    expect(rateAsOf(rates, 'JPY', 'EUR', '2026-02-02')!.rate).toBe('0.00619');
    expect(rateAsOf(rates, 'JPY', 'EUR', '2026-01-04')).toBeNull();
    expect(rateAsOf(rates, 'EUR', 'JPY', '2026-02-02')).toBeNull();
  });
});

describe('convertExactly', () => {
  it('minds the minor digits of both currencies', () => {
    // 12 345 yen × 0.006123 = 75.588435 euros = 7558.8435 cents
    expect(convertExactly(12_345, 'JPY', 'EUR', '0.006123')).toEqual(fraction(75_588_435n, 10_000n));
    // 1.234 dinars × 3 = 3.702 euros = 370.2 cents
    expect(convertExactly(1234, 'KWD', 'EUR', '3')).toEqual(fraction(3702n, 10n));
  });

  it('refuses what is no amount or no rate', () => {
    expect(() => convertExactly(1.5, 'EUR', 'JPY', '160')).toThrow(RangeError);
    for (const rate of ['0', '-1', '1e3', '', '1,2']) {
      expect(() => convertExactly(1, 'EUR', 'JPY', rate), rate).toThrow(RangeError);
    }
  });
});

describe('factorAsOf', () => {
  it('turns the opposite rate round where there is no straight one', () => {
    // 1 euro cent is 0.01 / 0.006123 yen, and yen have no smaller unit
    expect(factorAsOf(rates, 'EUR', 'JPY', '2026-01-31')).toEqual({ factor: fraction(10_000n, 6123n), rate: rates[0] });
    expect(factorAsOf(rates, 'EUR', 'EUR', '2026-01-31')).toEqual({ factor: fraction(1n), rate: null });
    expect(factorAsOf(rates, 'EUR', 'MXN', '2026-01-04')).toBeNull();
  });
});

const amount = fc.record({
  minor: fc.integer({ min: -1_000_000, max: 1_000_000_000 }),
  currency: fc.constantFrom('EUR', 'JPY', 'MXN', 'KWD'),
  day: fc.constantFrom('2026-01-05', '2026-01-20', '2026-02-02', '2026-03-01'),
});

describe('the parts add up to the whole', () => {
  it('for any split of the amounts, exactly and as shown', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(amount, fc.nat(4)), { minLength: 1 }), (marked) => {
        const whole = convertTotal(
          marked.map(([one]) => one),
          'EUR',
          rates,
        );
        const parts = [0, 1, 2, 3, 4].map((filter) => {
          const matching = marked.filter(([, mark]) => mark === filter).map(([one]) => one);
          return convertTotal(matching, 'EUR', rates).exact;
        });
        expect(sumFractions(parts)).toEqual(whole.exact);
        const shown = displayParts(parts);
        expect(shown.total).toBe(roundedMinor(whole.exact));
        expect(shown.parts.reduce((sum, part) => sum + part, 0)).toBe(shown.total);
      }),
    );
  });

  it('and no part shown is a whole unit away from its exact value', () => {
    const part = fc.tuple(fc.bigInt(-(10n ** 12n), 10n ** 12n), fc.bigInt(1n, 10n ** 6n));
    fc.assert(
      fc.property(fc.array(part, { minLength: 1 }), (pairs) => {
        const exact = pairs.map(([numerator, denominator]) => fraction(numerator, denominator));
        displayParts(exact).parts.forEach((shown, place) => {
          const { numerator, denominator } = exact[place]!;
          const distance = BigInt(shown) * denominator - numerator;
          expect(distance < denominator && -distance < denominator).toBe(true);
        });
      }),
    );
  });
});

describe('convertTotal', () => {
  it('names the rates used and the amounts without one', () => {
    const early = { minor: 500, currency: 'JPY', day: '2025-12-31' };
    const later = { minor: 100, currency: 'JPY', day: '2026-01-06' };
    const result = convertTotal([early, later, later, { minor: 7, currency: 'EUR', day: '2025-01-01' }], 'EUR', rates);
    expect(result.missing).toEqual([early]);
    expect(result.rates).toEqual([rates[0]]);
    expect(roundedMinor(result.exact)).toBe(129); // 7 + 2 × 61.23
  });
});

describe('allocate', () => {
  it('gives the odd unit to the largest remainder, the earlier among equals', () => {
    expect(allocate(100, [1, 1, 1])).toEqual([34, 33, 33]);
    expect(allocate(5, [3, 0, 4])).toEqual([2, 0, 3]);
    expect(allocate(-100, [1, 2])).toEqual([-33, -67]);
  });

  it('adds up to the total', () => {
    const weights = fc.array(fc.nat(1_000_000), { minLength: 1 }).filter((all) => all.some((weight) => weight > 0));
    fc.assert(
      fc.property(fc.maxSafeInteger(), weights, (total, parts) => {
        const sum = allocate(total, parts).reduce((all, part) => all + BigInt(part), 0n);
        expect(sum).toBe(BigInt(total));
      }),
    );
  });

  it('refuses weights that say nothing', () => {
    expect(() => allocate(10, [0, 0])).toThrow(RangeError);
    expect(() => allocate(10, [])).toThrow(RangeError);
    expect(() => allocate(10, [1, -1])).toThrow(RangeError);
  });
});
