import { describe, expect, it } from 'vitest';
import { Filter } from '#contracts/shared/filter.ts';
import { parseSearch, searchOf, stringifySearch } from './search.ts';

const read = searchOf(Filter);
const plant = '018f4c7e-6b1a-7000-8000-000000000001';

describe('filters in the address', () => {
  it('survive the way there and back', () => {
    const filter = read({
      plant: [plant],
      cause: ['tooling', 'none'],
      safety: true,
      gates: 2,
      from: '2026-08-24',
      q: 'two words',
    });
    expect(read(parseSearch(stringifySearch(filter)))).toEqual(filter);
    expect(filter).toEqual({
      plant: [plant],
      cause: ['tooling', 'none'],
      safety: true,
      gates: 2,
      from: '2026-08-24',
      q: 'two words',
    });
  });
  it('drop what is mistyped or unknown and keep the rest', () => {
    expect(read(parseSearch('?cause=toolng&found=field&x=1&from=2026-13-01'))).toStrictEqual({
      found: ['field'],
      cause: undefined,
      x: undefined,
      from: undefined,
    });
  });
});
