import { describe, expect, it } from 'vitest';
import type { BuildMonthRow } from '#contracts/maturity.ts';
import { cellAddress, endOfMonth, lastDayOf, rawPerMillion } from './months.ts';

const row = {
  month: '2026-11',
  produced: 2_000_000,
  cumulative: [1, 4, 6],
  filter: 'plant=a&source=customer&source=field&to=2027-03-01&builtFrom=2026-11-01&builtTo=2026-12-01',
} as BuildMonthRow;

describe('build months', () => {
  it('end with the month that lies so many months later', () => {
    expect(endOfMonth('2026-11', 0)).toBe('2026-12-01');
    expect(endOfMonth('2026-11', 1)).toBe('2027-01-01');
    expect(endOfMonth('2026-01', 24)).toBe('2028-02-01');
    expect(lastDayOf('2028-02')).toBe('2028-02-29');
  });
  it('open the reports of a cell by the month found', () => {
    const search = new URLSearchParams(cellAddress(row, 1).split('?')[1]);
    expect(search.get('to')).toBe('2027-01-01');
    expect(search.getAll('source')).toEqual(['customer', 'field']);
    expect(search.get('builtFrom')).toBe('2026-11-01');
  });
  it('have no rate without production', () => {
    expect(rawPerMillion(row)).toBe(3);
    expect(rawPerMillion({ ...row, produced: null })).toBeNull();
  });
});
