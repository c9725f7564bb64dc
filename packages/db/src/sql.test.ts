import { describe, expect, test } from 'vitest';
import { empty, join, raw, type SqlValue, sql } from './sql.ts';

describe('sql', () => {
  test('binds every value and numbers the placeholders', () => {
    const query = sql`select f.id from failure f where f.plant_id = ${'p1'} and f.quantity > ${3}`;
    expect(query.text).toBe('select f.id from failure f where f.plant_id = $1 and f.quantity > $2');
    expect(query.values).toEqual(['p1', 3]);
  });

  test('nests fragments and renumbers them', () => {
    const filter = join([sql`a = ${1}`, sql`b = any(${['x', 'y']})`], ' and ');
    const query = sql`select ${raw('count(*)')} from t where ${filter} limit ${5}`;
    expect(query.text).toBe('select count(*) from t where a = $1 and b = any($2) limit $3');
    expect(query.values).toEqual([1, ['x', 'y'], 5]);
  });

  test('the same fragment may be used twice', () => {
    const day = sql`${'2026-01-05'}::date`;
    expect(sql`select ${day}, ${day}`.text).toBe('select $1::date, $2::date');
  });

  test('an empty list and the empty fragment leave nothing behind', () => {
    expect(sql`a${join([])}b${empty}c`.text).toBe('abc');
    expect(join([sql`${1}`]).text).toBe('$1');
  });

  test('text given as a value never becomes part of the statement', () => {
    const query = sql`select ${"'; drop table failure; --"}`;
    expect(query.text).toBe('select $1');
  });

  test('undefined is refused, null is a value', () => {
    expect(() => sql`select ${undefined as unknown as SqlValue}`).toThrow('undefined');
    expect(sql`select ${null}`.values).toEqual([null]);
  });
});
