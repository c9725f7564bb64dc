import { expect, test } from 'vitest';
import { safeInteger, types } from './types.ts';

const parse = (oid: number, value: string) =>
  (types.getTypeParser(oid) as unknown as (value: string) => unknown)(value);

test('a 64-bit integer becomes a number only where that is exact', () => {
  expect(parse(20, '9007199254740991')).toBe(9007199254740991);
  expect(() => parse(20, '9007199254740993')).toThrow('too large');
  expect(safeInteger(-5n)).toBe(-5);
});

test('a numeric keeps its digits', () => {
  expect(parse(1700, '0.10')).toBe('0.10');
});

test('a day stays the same day in every zone', () => {
  expect(parse(1082, '2026-03-29')).toBe('2026-03-29');
  expect(parse(1182, '{2026-03-29,NULL}')).toEqual(['2026-03-29', null]);
});

test('instants are read with their offset, and as UTC where they have none', () => {
  expect(parse(1184, '2026-03-29 01:30:00+00')).toEqual(new Date('2026-03-29T01:30:00Z'));
  expect(parse(1114, '2026-03-29 01:30:00.25')).toEqual(new Date('2026-03-29T01:30:00.250Z'));
});

test('arrays follow their elements', () => {
  expect(parse(1016, '{1,2,NULL}')).toEqual([1, 2, null]);
  expect(parse(1231, '{1.50,2}')).toEqual(['1.50', '2']);
});
