import { describe, expect, it } from 'vitest';
import { minorUnitDigits } from '#analysis/money/currencies.ts';
import { fractionOfDecimal, multiplyFractions, type Rounding, roundFraction } from '#analysis/money/fraction.ts';
import { reference } from './reference.ts';

describe('minor units', () => {
  const { title, expected } = reference<unknown, Record<string, string[]>>('12-iso4217');
  it.each(Object.entries(expected))(`${title}: %s digits`, (digits, codes) => {
    for (const code of codes) expect(minorUnitDigits(code), code).toBe(Number(digits));
  });

  it('are hundredths for every other currency, and codes are checked', () => {
    for (const code of ['EUR', 'USD', 'CNY', 'MXN', 'HUF', 'MGA']) expect(minorUnitDigits(code), code).toBe(2);
    expect(() => minorUnitDigits('euro')).toThrow(RangeError);
  });
});

describe('rounding', () => {
  const { title, input, expected } = reference<{ values: string[] }, Record<Rounding, string[]>>('12-rounding');
  const cases = input.values.map((text, place) => ({ text, place }));
  it.each(cases)(`${title}: $text`, ({ text, place }) => {
    const [value, to] = text.split(' (to ');
    const decimals = to ? 2 : 0;
    const scaled = multiplyFractions(fractionOfDecimal(value!), fractionOfDecimal(String(10 ** decimals)));
    for (const rounding of ['half_even', 'half_up'] as const) {
      const shown = expected[rounding][place]!;
      expect(roundFraction(scaled, rounding), rounding).toBe(BigInt(shown.replace('.', '')));
    }
  });
});
