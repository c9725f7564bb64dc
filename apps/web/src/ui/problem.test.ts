import { expect, it } from 'vitest';
import { messages as de } from './messages.de.ts';
import { messages as en } from './messages.en.ts';

const [source = ''] = Object.values(
  import.meta.glob<string>('/apps/api/src/platform/problems.ts', { eager: true, query: '?raw', import: 'default' }),
);
const codes = [...source.matchAll(/^ {2}(\w+): \[\d{3}, /gm)].map(([, code]) => code ?? '');

it('has a title in each language for every code of the API', () => {
  expect(codes.length).toBeGreaterThan(20);
  expect(Object.keys(en.problem.title)).toEqual(expect.arrayContaining(codes));
  expect(Object.keys(de.problem.title)).toEqual(expect.arrayContaining(codes));
});
