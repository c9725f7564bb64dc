import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type DecimalMark, decideMark, noNumberEvidence, observeNumber, readDecimal } from './number.ts';

const decide = (...values: (string | number)[]) => {
  const evidence = noNumberEvidence();
  for (const value of values) observeNumber(evidence, value);
  return decideMark(evidence);
};

describe('the decimal mark of a column', () => {
  test.each([
    [['1,5', '2', '1.234'], 'comma'],
    [['1.5', '1,234'], 'point'],
    [['1.234,56'], 'comma'],
    [['1,234.56'], 'point'],
    [['1.234.567'], 'comma'],
    [['0,125'], 'comma'],
    [['12345,678'], 'comma'],
    [['7', '12'], 'point'],
    [['1.234', '5.678'], 'ask'],
    [['1,234'], 'ask'],
    [['1,5', '1.5'], 'ask'],
    [['no number', ''], 'point'],
    [[1.234, 5.678], 'point'],
  ] as const)('%j is read with %s', (values, mark) => expect(decide(...values)).toBe(mark));
});

describe('a number', () => {
  test.each<[string | number, DecimalMark, string | null]>([
    ['1.234,50', 'comma', '1234.5'],
    ['1,234.50', 'point', '1234.5'],
    ['1 234,5', 'comma', '1234.5'],
    ["1'234.5", 'point', '1234.5'],
    ['1\u202f234\u00a0567', 'point', '1234567'],
    ['€ 12,30', 'comma', '12.3'],
    ['12.30 EUR', 'point', '12.3'],
    ['(45)', 'point', '-45'],
    ['45-', 'point', '-45'],
    ['\u22127', 'point', '-7'],
    ['-0', 'point', '0'],
    ['007', 'point', '7'],
    ['1e30', 'point', BigInt(1e30).toString()],
    [1e30, 'point', BigInt(1e30).toString()],
    [0.1 + 0.2, 'point', '0.3'],
    ['1.2.3', 'point', null],
    ['12,34,5', 'point', null],
    ['1,23', 'point', null],
    ['12a', 'point', null],
    ['.', 'point', null],
    ['1e999', 'point', null],
  ])('%j with a decimal %s is %s', (text, mark, value) => expect(readDecimal(text, mark)).toBe(value));

  test('written by any locale is read back exactly', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -99_999_999, max: 99_999_999 }),
        fc.constantFrom('en-US', 'de-DE', 'de-CH', 'sv-SE', 'en-IN'),
        (cents, locale) => {
          const value = cents / 100;
          const text = new Intl.NumberFormat(locale, { minimumFractionDigits: 2, maximumFractionDigits: 2 }).format(
            value,
          );
          const mark = /,\d\d\D*$/.test(text) ? 'comma' : 'point';
          expect(Number(readDecimal(text, mark))).toBe(value === 0 ? 0 : value);
        },
      ),
    );
  });

  test('is never guessed: what both marks read differently is evidence for neither', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 999 }),
        fc.integer({ min: 0, max: 999 }),
        fc.constantFrom('.', ','),
        (whole, rest, sign) => {
          expect(decide(`${whole}${sign}${String(rest).padStart(3, '0')}`)).toBe('ask');
        },
      ),
    );
  });
});
