import { expect, test } from 'vitest';
import { missingFields, neededFields } from './fields.ts';

const plain = ['plant', 'foundOn', 'stage', 'quantityFound', 'source'] as const;

test('a file needs its required fields, from a column or for all rows', () => {
  expect(
    missingFields('failures', { columns: ['plant', null, 'foundOn'], fixed: { source: 'line', quantityFound: ' ' } }),
  ).toEqual(['stage', 'quantityFound']);
  expect(missingFields('failures', { columns: [...plain], fixed: {} })).toEqual([]);
});

test('amounts must say whether they are booked and what for', () => {
  expect(missingFields('failures', { columns: [...plain, 'costAmount'], fixed: {} })).toEqual([
    'costBasis',
    'costCategory',
  ]);
  expect(neededFields('failures', { columns: [...plain, 'cost.scrap'], fixed: {} })).toContain('costBasis');
});
