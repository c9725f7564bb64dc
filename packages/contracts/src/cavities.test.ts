import { describe, expect, it } from 'vitest';
import { cavityName, faceCavities, gridCavities, rowName } from './cavities.ts';

describe('names of cavities', () => {
  it('count rows by letters and columns by numbers', () => {
    expect([1, 2, 26, 27, 28, 40].map(rowName)).toEqual(['A', 'B', 'Z', 'AA', 'AB', 'AN']);
    expect(cavityName(2, 3)).toBe('B3');
  });
  it('run row by row and differ, on the largest face allowed', () => {
    expect(gridCavities({ rows: 2, columns: 3 })).toEqual(['A1', 'A2', 'A3', 'B1', 'B2', 'B3']);
    expect(new Set(gridCavities({ rows: 40, columns: 60 })).size).toBe(2400);
  });
  it('leave out what the face does not have', () => {
    expect(faceCavities({ rows: 2, columns: 2, missingCavities: ['A2'] })).toEqual(['A1', 'B1', 'B2']);
  });
});
