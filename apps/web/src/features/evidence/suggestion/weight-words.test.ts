import { expect, it } from 'vitest';
import { weightWords } from './weight-words.ts';

it('says in words how strongly a finding speaks, in both directions', () => {
  expect(weightWords(0)).toBe('neither');
  expect(weightWords(Math.log(1.4))).toBe('neither');
  expect(weightWords(Math.log(2))).toBe('for.slight');
  expect(weightWords(-Math.log(4))).toBe('against.clear');
  expect(weightWords(Math.log(12))).toBe('for.strong');
  expect(weightWords(-Math.log(100))).toBe('against.decisive');
});
