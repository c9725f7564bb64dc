import { describe, expect, it } from 'vitest';
import { differences } from './differences.ts';

describe('differences', () => {
  it('are the fields that changed, without the bookkeeping', () => {
    const before = { id: '1', version: 1, code: 'L1', name: 'Line', tags: ['a'], gone: null };
    const after = { id: '1', version: 2, code: 'L1', name: 'Line 1', tags: ['a', 'b'], gone: undefined };
    expect(differences({ before, after })).toEqual([
      { field: 'name', before: 'Line', after: 'Line 1' },
      { field: 'tags', before: ['a'], after: ['a', 'b'] },
    ]);
  });
  it('of a new row are what it says', () => {
    const after = { id: '1', version: 1, code: 'L1', retiredAt: null, list: [], rate: 0, safe: false };
    expect(differences({ before: null, after })).toEqual([
      { field: 'code', before: undefined, after: 'L1' },
      { field: 'rate', before: undefined, after: 0 },
      { field: 'safe', before: undefined, after: false },
    ]);
  });
  it('are none where nothing was told', () => {
    expect(differences({ before: null, after: null })).toEqual([]);
  });
});
