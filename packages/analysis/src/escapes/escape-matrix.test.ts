import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Amounts, type EscapeRow, escapeMatrix, longEscapes } from './escape-matrix.ts';

const stage = fc.integer({ min: 1, max: 10 });
const row: fc.Arbitrary<EscapeRow> = fc.record({
  origin: fc.option(stage),
  found: stage,
  reports: fc.nat(1000),
  terminals: fc.nat(5000),
  minor: fc.integer({ min: -100_000, max: 1_000_000 }),
});

const sum = (parts: Amounts[]): Amounts =>
  parts.reduce(
    (all, part) => ({
      reports: all.reports + part.reports,
      terminals: all.terminals + part.terminals,
      minor: all.minor + part.minor,
    }),
    { reports: 0, terminals: 0, minor: 0 },
  );

describe('escapeMatrix', () => {
  it('margins, cells and unknown origins add up to the total', () => {
    fc.assert(
      fc.property(fc.array(row), (rows) => {
        const matrix = escapeMatrix(rows);
        expect(sum(matrix.byFound)).toEqual(matrix.total);
        expect(sum([...matrix.byOrigin, ...matrix.unknownOrigin])).toEqual(matrix.total);
        expect(sum([...matrix.cells.flat(), ...matrix.unknownOrigin])).toEqual(matrix.total);
      }),
    );
  });

  it('the matrices of any split add up to the matrix of the whole', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(row, fc.boolean())), (marked) => {
        const rows = (side: boolean) => marked.filter(([, mark]) => mark === side).map(([one]) => one);
        const whole = escapeMatrix(marked.map(([one]) => one));
        const [left, right] = [escapeMatrix(rows(true)), escapeMatrix(rows(false))];
        const cells = left.cells.map((line, i) => line.map((cell, j) => sum([cell, right.cells[i]![j]!])));
        expect(cells).toEqual(whole.cells);
        expect(sum([left.impossible, right.impossible])).toEqual(whole.impossible);
      }),
    );
  });

  it('keeps apart what was found before it was made', () => {
    const matrix = escapeMatrix([{ origin: 6, found: 4, reports: 2, terminals: 3, minor: 50 }]);
    expect(matrix.impossible).toEqual({ reports: 2, terminals: 3, minor: 50 });
  });

  it('refuses a stage that does not exist', () => {
    expect(() => escapeMatrix([{ origin: 1, found: 11, reports: 1, terminals: 1, minor: 0 }])).toThrow(RangeError);
  });
});

describe('longEscapes', () => {
  const amounts = { reports: 1, terminals: 1, minor: 100 };

  it('lists faults that passed two or more gates, the longest first', () => {
    const rows = [
      { origin: 4, found: 6, ...amounts },
      { origin: 4, found: 7, ...amounts },
      { origin: 2, found: 10, ...amounts },
      { origin: null, found: 10, ...amounts },
    ];
    expect(longEscapes(rows).map((row) => row.gatesPassed)).toEqual([7, 2]);
  });
});
