import { describe, expect, test } from 'vitest';
import { integerReader } from './integer.ts';
import { amountReader, toMinor } from './money.ts';
import { Refusal } from './refusal.ts';

const codeOf = (value: unknown) => (value instanceof Refusal ? value.code : value);

describe('an amount', () => {
  test.each([
    ['12.3', 2, 1230],
    ['12', 0, 12],
    ['12.345', 3, 12_345],
    ['33.333333', 2, 3333],
    ['33.335000', 2, 3334],
    ['1.234', 2, 'too_precise'],
    ['12.5', 0, 'too_precise'],
    ['-1', 2, 'too_small'],
    ['99999999999999', 2, 'too_large'],
  ])('of %s at %i decimals is %s minor units', (decimal, digits, minor) =>
    expect(codeOf(toMinor(decimal, digits))).toBe(minor),
  );

  test('that a spreadsheet calculated keeps no noise', () => expect(amountReader('comma')(100 / 3)).toBe('33.3333'));
});

describe('a count', () => {
  const read = integerReader('comma', 1, 100);
  test.each([
    ['12', '12'],
    ['12,0', '12'],
    [7, '7'],
    ['', null],
    ['12,5', 'not_whole'],
    ['0', 'too_small'],
    ['-3', 'too_small'],
    ['1e30', 'too_large'],
    ['a few', 'not_a_number'],
  ])('of %j is read as %j', (cell, value) => expect(codeOf(read(cell))).toBe(value));
});
