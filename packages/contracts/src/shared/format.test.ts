import { describe, expect, it } from 'vitest';
import { addDays, formats, isoWeek } from './format.ts';

const plain = (text: string): string => text.replace(/[\u00a0\u202f\u2009]/g, ' ');
const en = formats('en');
const de = formats('de');

describe('money', () => {
  it('places the decimal point by ISO 4217', () => {
    expect(plain(en.money({ amountMinor: 123_456, currency: 'EUR' }))).toBe('EUR 1,234.56');
    expect(plain(de.money({ amountMinor: 123_456, currency: 'EUR' }))).toBe('1.234,56 EUR');
    expect(plain(en.money({ amountMinor: 123_456, currency: 'JPY' }))).toBe('JPY 123,456');
    expect(plain(en.money({ amountMinor: 123_456, currency: 'KWD' }))).toBe('KWD 123.456');
    expect(plain(en.money({ amountMinor: 123_456, currency: 'HUF' }))).toBe('HUF 1,234.56');
  });
  it('is shortened for headlines', () => {
    expect(plain(en.moneyShort({ amountMinor: 1_234_567, currency: 'EUR' }))).toBe('EUR 12.3k');
    expect(plain(de.moneyShort({ amountMinor: 846_000, currency: 'EUR' }))).toBe('8.460 EUR');
    expect(plain(en.moneyShort({ amountMinor: -95_049, currency: 'EUR' }))).toBe('-EUR 950');
  });
});

describe('figures', () => {
  it('keep three significant digits below 100', () => {
    expect(en.significant(7.1234)).toBe('7.12');
    expect(en.significant(1234.5)).toBe('1,235');
    expect(de.significant(7.1234)).toBe('7,12');
  });
  it('never round a chance to certainty', () => {
    expect([0, 0.001, 0.055, 0.994, 0.9999, 1].map(en.chance)).toEqual(['0%', '< 1%', '6%', '99%', '> 99%', '100%']);
  });
  it('show the sign of a change', () => {
    expect(en.change(0.123)).toBe('+12%');
    expect(plain(de.change(-0.051))).toBe('-5,1 %');
    expect(en.change(0)).toBe('0%');
  });
});

describe('days', () => {
  it('name a half-open period by its last day inside', () => {
    expect(plain(en.period('2026-11-16', '2026-11-23'))).toBe('16 – 22 Nov 2026');
  });
  it('count ISO 8601 weeks', () => {
    // ISO 8601: 2027-01-01 is a Friday and belongs to week 53 of 2026; 2024-12-30 to week 1 of 2025.
    expect(isoWeek('2027-01-01')).toEqual({ year: 2026, week: 53 });
    expect(isoWeek('2024-12-30')).toEqual({ year: 2025, week: 1 });
    expect(en.week('2026-11-23')).toBe('2026-W48');
  });
  it('step over leap days and daylight saving', () => {
    expect(addDays('2028-02-28', 1)).toBe('2028-02-29');
    expect(addDays('2026-03-29', 1)).toBe('2026-03-30');
  });
});
