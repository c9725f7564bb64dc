import { describe, expect, it } from 'vitest';
import type { Escapes } from '#contracts/analyses.ts';
import { matrixOf } from './matrix.ts';

const counts = (reports: number) => ({ reports, terminals: 2 * reports, bookedMinor: 100 * reports, estimateMinor: 0 });
const cells: Escapes['cells'] = [
  { origin: 'insertion', found: 'insertion', ...counts(5) },
  { origin: 'insertion', found: 'field', ...counts(2) },
  { origin: 'receiving', found: 'field', ...counts(1) },
  { origin: null, found: 'field', ...counts(4) },
];

describe('escape matrix', () => {
  const matrix = matrixOf(cells);

  it('keeps the order of the process and puts the unknown origin last', () => {
    expect(matrix.origins).toEqual(['receiving', 'insertion', 'none']);
    expect(matrix.founds).toEqual(['insertion', 'field']);
  });
  it('adds rows and columns up to the same whole', () => {
    // field: 2 + 1 + 4 = 7; insertion as origin: 5 + 2 = 7.
    expect(matrix.ofFound('field').reports).toBe(7);
    expect(matrix.ofOrigin('insertion').terminals).toBe(14);
    expect(matrix.origins.reduce((sum, origin) => sum + matrix.ofOrigin(origin).reports, 0)).toBe(12);
    expect(matrix.founds.reduce((sum, found) => sum + matrix.ofFound(found).reports, 0)).toBe(12);
  });
  it('counts the stages from origin to found', () => {
    // insertion is stage 4, field stage 10.
    expect(matrix.at('insertion', 'field')?.steps).toBe(6);
    expect(matrix.at('insertion', 'insertion')?.steps).toBe(0);
    expect(matrix.at('none', 'field')?.steps).toBeNull();
    expect(matrix.at('receiving', 'insertion')).toBeUndefined();
  });
});
