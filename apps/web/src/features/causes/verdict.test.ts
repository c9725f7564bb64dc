import { describe, expect, it } from 'vitest';
import { verdictOf } from './verdict.ts';

const bar = (topProbability: number | null) => ({ topProbability });

describe('who belongs to the top', () => {
  it('is sure from 95 % and open down to 5 %', () => {
    const bars = [bar(1), bar(0.95), bar(0.949), bar(0.05), bar(0.049), bar(0)];
    expect(verdictOf(bars)).toEqual({ sure: [bar(1), bar(0.95)], open: [bar(0.949), bar(0.05)] });
  });
  it('says nothing where nothing was computed', () => {
    expect(verdictOf([bar(null)])).toEqual({ sure: [], open: [] });
  });
});
