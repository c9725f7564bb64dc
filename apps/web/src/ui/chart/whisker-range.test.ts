import { expect, it } from 'vitest';
import { rangeOf, whiskerOf } from './whisker-range.ts';

const figure = (value: number, low: number, high: number | null) => ({
  value,
  interval: { low, high, confidence: 0.95 },
  reason: null,
});
const none = { value: null, interval: null, reason: 'too_few' as const };

it('an axis shows every interval, and zero', () => {
  expect(rangeOf([figure(5, 2, 9), figure(4, -3, null), none])).toEqual({ suggestedMin: -3, suggestedMax: 9 });
  expect(rangeOf([figure(5, 2, 9)])).toEqual({ suggestedMin: 0, suggestedMax: 9 });
  expect(whiskerOf(none)).toBeNull();
});
