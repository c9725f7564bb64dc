import { expect, test } from 'vitest';
import { reportsOf } from './reports-of.ts';

test('a signal opens its reports within the filter and the period that were counted', () => {
  const filter = { cause: ['tooling' as const], plant: ['p', 'q'], currency: 'EUR' };
  expect(reportsOf({ opens: { plant: ['p'], tool: ['t'] } }, filter, { from: '2026-03-02', to: '2026-06-01' })).toEqual(
    {
      cause: ['tooling'],
      plant: ['p'],
      tool: ['t'],
      from: '2026-03-02',
      to: '2026-06-01',
    },
  );
});
