import { describe, expect, test } from 'vitest';
import { stepOnFace } from './step-on-face.ts';

/** A1 A2 A3 / B1 – B3 */
const face = { rows: 2, columns: 3, missingCavities: ['B2'] };

describe('stepping over a face', () => {
  test('goes to the neighbour', () =>
    expect(stepOnFace(face, { row: 1, column: 1 }, { row: 0, column: 1 })).toEqual({ row: 1, column: 2 }));
  test('jumps over a cavity that the face does not have', () =>
    expect(stepOnFace(face, { row: 2, column: 1 }, { row: 0, column: 1 })).toEqual({ row: 2, column: 3 }));
  test('stays where there is nothing further', () => {
    expect(stepOnFace(face, { row: 1, column: 2 }, { row: 1, column: 0 })).toEqual({ row: 1, column: 2 });
    expect(stepOnFace(face, { row: 1, column: 3 }, { row: 0, column: 1 })).toEqual({ row: 1, column: 3 });
  });
});
