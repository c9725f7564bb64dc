import { describe, expect, it } from 'vitest';
import { absorbingChain } from '#analysis/gates/absorbing-chain.ts';
import { costOfOneFault, faultPath } from '#analysis/gates/fault-path.ts';
import { inspectionBreakEven } from '#analysis/gates/inspection-break-even.ts';
import { expectAbsolute, reference } from './reference.ts';

type Matrix = number[][];

/** Entries may be printed as fractions such as "1/3". */
const numbers = (matrix: (number | string)[][]): Matrix =>
  matrix.map((row) =>
    row.map((entry) => {
      const [over, under = '1'] = `${entry}`.split('/');
      return Number(over) / Number(under);
    }),
  );

const expectMatrix = (actual: Matrix, expected: Matrix): void =>
  actual.forEach((row, i) => {
    row.forEach((value, j) => {
      expectAbsolute(value, expected[i]![j]!, 1e-12);
    });
  });

describe('absorbing chains', () => {
  type Input = { Q: (number | string)[][]; R?: Matrix };
  type Expected = { N: Matrix; t: number[]; B?: Matrix };
  for (const id of ['10-drunkard-4', '10-drunkard-5', '10-increasing-walk']) {
    const { title, input, expected } = reference<Input, Expected>(id);
    it(title, () => {
      const moves = numbers(input.Q);
      const ends = input.R ?? moves.map((row) => [1 - row.reduce((sum, probability) => sum + probability, 0)]);
      const { visits, steps, absorbed } = absorbingChain(moves, ends);
      expectMatrix(visits, expected.N);
      expectMatrix([steps], [expected.t]);
      if (expected.B) expectMatrix(absorbed, expected.B);
    });
  }
});

describe('gates in a row', () => {
  type Expected = { caught: number[]; field: number };
  const gates = reference<{ e: number[] }, Expected>('10-gates');
  it(gates.title, () => {
    const path = faultPath(gates.input.e);
    expectMatrix([path.found[0]!], [[...gates.expected.caught, gates.expected.field]]);
    expectAbsolute(path.reachesField[0]!, gates.expected.field, 1e-12);
    const costs = [2, 10, 70, 900];
    const byHand = 0.7 * 2 + 0.24 * 10 + 0.03 * 70 + 0.03 * 900;
    expectAbsolute(costOfOneFault(path, costs)[0]!, byHand, 1e-9);
    expect(costOfOneFault(path, costs)[3]).toBe(900);
  });
});

describe('inspect every item or none', () => {
  type Input = { cases: { k1: number; k2: number; p: number }[] };
  type Expected = { breakeven: number; decision: string[]; expected_cost_per_part: Record<string, number> };
  const { title, input, expected } = reference<Input, Expected>('10-kp');
  it.each(input.cases.map((one, place) => ({ ...one, decision: expected.decision[place]! })))(
    `${title}: $p`,
    ({ k1, k2, p, decision }) => {
      const choice = inspectionBreakEven(p, { inspectOne: k1, passOne: k2 });
      const costs = expected.expected_cost_per_part;
      expectAbsolute(choice.breakEven, expected.breakeven, 1e-15);
      expect(choice.inspect).toBe(decision === 'no inspection' ? 'none' : 'every_item');
      expectAbsolute(choice.costOfNone, costs[`p=${`${p}`.slice(1)} none`]!, 1e-12);
      expectAbsolute(choice.costOfEvery, costs[`p=${`${p}`.slice(1)} all`]!, 1e-12);
    },
  );
});
