import { expect, test } from 'vitest';
import { splitPeriod } from './carriers.ts';

test('a period is its whole weeks or months and the ends that are left', () => {
  expect(splitPeriod({ from: '2026-03-02', to: '2026-03-16' }, 'week')).toEqual({
    whole: { from: '2026-03-02', to: '2026-03-16' },
    ends: [],
  });
  expect(splitPeriod({ from: '2026-02-27', to: '2026-04-03' }, 'month')).toEqual({
    whole: { from: '2026-03-01', to: '2026-04-01' },
    ends: [
      { from: '2026-02-27', to: '2026-03-01' },
      { from: '2026-04-01', to: '2026-04-03' },
    ],
  });
  expect(splitPeriod({ from: '2026-03-03', to: '2026-03-08' }, 'week')).toBeNull();
});
