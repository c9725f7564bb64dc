import { describe, expect, it } from 'vitest';
import type { Outcome, WhatIfResult } from '#contracts/what-if.ts';
import { isBest, outcomeRows } from './outcomes.ts';

const set = (...keys: string[]) => ({ keys }) as Outcome;
const result = (alone: Outcome[], together: Outcome, best: Outcome | null) =>
  ({ alone, together, best }) as unknown as WhatIfResult;

describe('rows of a result', () => {
  it('hold every set once', () => {
    const rows = outcomeRows(result([set('a'), set('b')], set('a', 'b'), set('b', 'a')));
    expect(rows.map(({ id }) => id)).toEqual(['a', 'b', 'together']);
    expect(outcomeRows(result([set('a')], set('a'), set('a')))).toHaveLength(1);
    expect(outcomeRows(result([set('a'), set('b'), set('c')], set('a', 'b'), set('b', 'c')))).toHaveLength(5);
  });
  it('know the best set however its options are ordered', () => {
    const all = result([set('a'), set('b')], set('a', 'b'), set('b', 'a'));
    expect(isBest(set('a', 'b'), all)).toBe(true);
    expect(isBest(set('a'), all)).toBe(false);
    expect(isBest(set('a'), result([set('a')], set('a'), null))).toBe(false);
  });
});
