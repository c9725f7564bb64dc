import { expect, test } from 'vitest';
import { readValues } from './values.ts';

test('a pasted column is read with decimal point or comma, however it is parted', () => {
  expect(readValues('18.2\r\n19,4\n\n20\n')).toEqual({ values: [18.2, 19.4, 20], wrong: null, tooMany: false });
  expect(readValues('18.2, 19.4; 20\t21').values).toEqual([18.2, 19.4, 20, 21]);
  expect(readValues('  ').values).toEqual([]);
});

test('the first piece that is no force is named', () => {
  expect(readValues('18.2\nn/a\n-3').wrong).toBe('n/a');
  expect(readValues('0').wrong).toBe('0');
  expect(readValues('1.234,5').wrong).toBe('1.234,5');
  expect(readValues(Array(1001).fill('20').join('\n')).tooMany).toBe(true);
});
