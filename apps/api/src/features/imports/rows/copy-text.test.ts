import { expect, test } from 'vitest';
import { copyLine } from './copy-text.ts';

test('follows the text format of COPY', () => {
  expect(copyLine(['a\tb\\c\nd\r', null, 5, true, []])).toBe('a\\tb\\\\c\\nd\\r\t\\N\t5\ttrue\t{}');
  expect(
    copyLine([
      ['a"b', 'c,d\\'],
      [1, 2],
    ]),
  ).toBe('{"a\\\\"b","c,d\\\\\\\\"}\t{1,2}');
});
