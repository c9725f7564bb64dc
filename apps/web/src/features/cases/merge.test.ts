import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { merge } from './merge.ts';

const rows = (...texts: string[]) => texts.map((text, place) => ({ id: `row${place}`, text }));

describe('two people’s changes', () => {
  it('of different fields are both kept', () => {
    expect(merge({ a: '1', b: '2' }, { a: 'x', b: '2' }, { a: '1', b: 'y' })).toEqual({
      content: { a: 'x', b: 'y' },
      clashes: [],
    });
  });
  it('of different rows are both kept, and new rows of both', () => {
    const mine = [...rows('mine', 'two'), { id: 'new1', text: 'm' }];
    const theirs = [...rows('one', 'theirs'), { id: 'new2', text: 't' }];
    expect(merge({ rows: rows('one', 'two') }, { rows: mine }, { rows: theirs })).toEqual({
      content: { rows: [...rows('mine', 'theirs'), { id: 'new2', text: 't' }, { id: 'new1', text: 'm' }] },
      clashes: [],
    });
  });
  it('of the same field are named, and mine stands until the person chooses', () => {
    expect(merge({ a: '1' }, { a: 'm' }, { a: 't' })).toEqual({
      content: { a: 'm' },
      clashes: [{ path: '/a', mine: 'm', theirs: 't' }],
    });
  });
  it('take away only what nobody changed', () => {
    expect(merge({ rows: rows('one', 'two') }, { rows: rows('one') }, { rows: rows('one', 'two') }).content).toEqual({
      rows: rows('one'),
    });
    expect(
      merge({ rows: rows('one', 'two') }, { rows: rows('one') }, { rows: rows('one', 'changed') }).content,
    ).toEqual({ rows: rows('one', 'changed') });
  });
  it('lose nothing: a row that either added is there', () => {
    const list = fc.uniqueArray(fc.record({ id: fc.string({ minLength: 4, maxLength: 6 }), text: fc.string() }), {
      selector: ({ id }) => id,
      maxLength: 6,
    });
    fc.assert(
      fc.property(list, list, (mine, theirs) => {
        const merged = merge([], mine, theirs).content as { id: string }[];
        for (const { id } of [...mine, ...theirs]) expect(merged.some((row) => row.id === id)).toBe(true);
      }),
    );
  });
});
