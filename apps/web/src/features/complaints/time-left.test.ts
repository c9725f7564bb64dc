import { expect, test } from 'vitest';
import { timeLeft } from './time-left.ts';

test('time left is said in minutes below two hours, late or not, and in whole hours above', () => {
  expect(timeLeft(0)).toEqual({ unit: 'minutes', count: 0 });
  expect(timeLeft(119)).toEqual({ unit: 'minutes', count: 119 });
  expect(timeLeft(-90)).toEqual({ unit: 'minutes', count: 90 });
  expect(timeLeft(1439)).toEqual({ unit: 'hours', count: 23 });
});
