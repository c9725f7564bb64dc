import { describe, expect, it } from 'vitest';
import { currencies, isCurrency, minorDigits } from './currency.ts';

/** Introduced after the data of some runtimes was cut. */
const young = new Set(['ZWG', 'SLE', 'XCG']);

describe('currencies', () => {
  it('are known to Intl (Unicode CLDR)', () => {
    const known = new Set(Intl.supportedValuesOf('currency'));
    expect(currencies.filter((code) => !known.has(code) && !young.has(code))).toEqual([]);
    expect(new Set(currencies).size).toBe(currencies.length);
  });
  it('leave out withdrawn and invented codes', () => {
    for (const code of ['DEM', 'XXX', 'XTS', 'QQQ', 'eur', '']) expect(isCurrency(code)).toBe(false);
    expect(isCurrency('EUR')).toBe(true);
  });
  it('have decimals by ISO 4217, not by everyday use', () => {
    expect(['JPY', 'EUR', 'HUF', 'KWD'].map(minorDigits)).toEqual([0, 2, 2, 3]);
  });
});
