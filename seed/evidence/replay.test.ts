import { expect, test } from 'vitest';
import { generateDemo } from '../generate.ts';
import { type Case, drawCases } from './cases.ts';
import { replay } from './replay.ts';

const { world, filed } = generateDemo({ anchor: '2026-06-14', seed: 1, passwordHash: '-' });
const cases = drawCases(world, filed);
const answersOf = ({ taken }: Case) => new Map(taken.map(({ code, answer }) => [code, answer]));

test('every case is judged before it is learned from', () => {
  const { decisions, learned } = replay(filed, cases, answersOf);
  expect(decisions.length).toBeGreaterThan(1_300);
  expect(learned.version).toBe(decisions.length);
  expect(decisions.every(({ version }, place) => version <= place)).toBe(true);

  const last = decisions.at(-1)!;
  const other = last.cause === 'tooling' ? ('handling' as const) : ('tooling' as const);
  const changed = cases.map((it) => (it === last.case ? { ...it, decision: { ...it.decision!, cause: other } } : it));
  const again = replay(filed, changed, answersOf).decisions.at(-1)!;
  expect(again.cause).toBe(other);
  expect(again.probabilities).toEqual(last.probabilities);
}, 240_000);
