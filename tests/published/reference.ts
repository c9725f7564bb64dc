import { readFileSync } from 'node:fs';
import { expect } from 'vitest';

/** One entry of `references.json`, or of a file that one of the `compute-*.py` here writes. */
export type Reference<Input, Expected> = {
  id: string;
  source: string;
  provenance: string[];
  tolerance?: string;
  input: Input;
  expected: Expected;
  cases: { input: Input; expected: Expected }[];
  /** Names the source and how its digits were obtained, for the title of the test. */
  title: string;
};

type Entry = Omit<Reference<unknown, unknown>, 'title'>;

const read = (name: string): Entry[] => JSON.parse(readFileSync(new URL(name, import.meta.url), 'utf8'));

const entries = [
  ...read('./references.json'),
  ...read('./references-added.json'),
  ...read('./references-working-time.json'),
];

/** The entry with this id; throws when there is none, so a renamed entry fails its test. */
export function reference<Input, Expected>(id: string): Reference<Input, Expected> {
  const entry = entries.find((candidate) => candidate.id === id);
  if (!entry) throw new Error(`references.json has no entry ${id}.`);
  return { ...entry, title: `${id} — ${entry.source} (${entry.provenance.join('; ')})` } as Reference<Input, Expected>;
}

/** |actual - expected| <= relative × |expected|; an expected 0 must be exactly 0. */
export function expectRelative(actual: number | null, expected: number, relative = 1e-6): void {
  expect(actual, `expected ${expected}, got ${actual}`).not.toBeNull();
  expect(Math.abs(actual! - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
}

/** |actual - expected| <= absolute. */
export function expectAbsolute(actual: number | null, expected: number, absolute: number): void {
  expect(actual).not.toBeNull();
  expect(Math.abs(actual! - expected), `expected ${expected}, got ${actual}`).toBeLessThanOrEqual(absolute);
}
