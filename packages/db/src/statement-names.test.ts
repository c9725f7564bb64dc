import { expect, test } from 'vitest';
import { statementNames } from './statement-names.ts';

test('one name per text, and none beyond the limit', () => {
  const name = statementNames(2);
  const first = name({ sql: 'select 1' });
  expect(first).toMatch(/^p[0-9a-f]{40}$/);
  expect(name({ sql: 'select 2' })).not.toBe(first);
  expect(name({ sql: 'select 3' })).toBe('');
  expect(name({ sql: 'select 1' })).toBe(first);
});
