import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { convertMinor, findWay, type Rate } from './conversion.rules.ts';

const rate = (base: string, quote: string, value: string, on = '2026-01-01'): Rate => ({
  base,
  quote,
  rate: value,
  on,
});

describe('converting', () => {
  test('by hand: 12.50 EUR at 1.0850 USD each are 13.5625, rounded 13.56 USD', () => {
    expect(convertMinor(1250, 'EUR', 'USD', [rate('EUR', 'USD', '1.0850')])).toBe(1356n);
  });
  test('by hand, inverse: 13.56 USD / 1.0850 are 12.4977, rounded 12.50 EUR', () => {
    expect(convertMinor(1356, 'USD', 'EUR', [rate('EUR', 'USD', '1.0850')])).toBe(1250n);
  });
  test('decimal places differ: 1 KWD (3 places) at 480 JPY (none)', () => {
    expect(convertMinor(1000, 'KWD', 'JPY', [rate('KWD', 'JPY', '480')])).toBe(480n);
  });
  test('two rates are rounded once: 0.01 A → 0.004 → 0.008 B, not 0', () => {
    expect(convertMinor(1, 'USD', 'MXN', [rate('USD', 'EUR', '0.4'), rate('EUR', 'MXN', '2')])).toBe(1n);
  });
  test('half goes away from zero, on both sides', () => {
    expect(convertMinor(1, 'EUR', 'USD', [rate('EUR', 'USD', '0.5')])).toBe(1n);
    expect(convertMinor(-1, 'EUR', 'USD', [rate('EUR', 'USD', '0.5')])).toBe(-1n);
  });
  test('a way that does not lead there is refused', () => {
    expect(() => convertMinor(1, 'EUR', 'USD', [rate('EUR', 'GBP', '1')])).toThrow('end at GBP');
    expect(() => convertMinor(1, 'EUR', 'USD', [rate('GBP', 'USD', '1')])).toThrow('No way');
  });
  test('there and back is off by no more than the rounding', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e12, max: 1e12 }), fc.integer({ min: 1, max: 99_999 }), (amount, thousandths) => {
        const way = [
          rate('EUR', 'USD', `${Math.floor(thousandths / 1000)}.${String(thousandths % 1000).padStart(3, '0')}`),
        ];
        const back = convertMinor(Number(convertMinor(amount, 'EUR', 'USD', way)), 'USD', 'EUR', way);
        expect(Math.abs(Number(back) - amount)).toBeLessThanOrEqual(Math.ceil(500 / thousandths) + 1);
      }),
    );
  });
});

describe('the way', () => {
  const eurUsd = rate('EUR', 'USD', '1.1');
  const eurMxn = rate('EUR', 'MXN', '20');
  test('none is needed within one currency', () => expect(findWay([], 'EUR', 'EUR', 'EUR')).toEqual([]));
  test('a rate serves both directions', () => {
    expect(findWay([eurUsd], 'EUR', 'USD', 'EUR')).toEqual([eurUsd]);
    expect(findWay([eurUsd], 'USD', 'EUR', 'EUR')).toEqual([eurUsd]);
  });
  test('the newest wins, and on one day the direct one', () => {
    const inverse = rate('USD', 'EUR', '0.9');
    const newer = rate('USD', 'EUR', '0.8', '2026-02-01');
    expect(findWay([inverse, eurUsd], 'EUR', 'USD', 'EUR')).toEqual([eurUsd]);
    expect(findWay([inverse, eurUsd, newer], 'EUR', 'USD', 'EUR')).toEqual([newer]);
  });
  test('over the group’s currency where there is no direct rate', () =>
    expect(findWay([eurUsd, eurMxn], 'USD', 'MXN', 'EUR')).toEqual([eurUsd, eurMxn]));
  test('none', () => expect(findWay([eurUsd], 'USD', 'MXN', 'EUR')).toBeNull());
});
