import { problem } from '#api/platform/problems.ts';
import { AnalysisFilter } from '#contracts/shared/filter.ts';
import type { WhatIfInput } from '#contracts/what-if.ts';

const wrong = (detail: string, path: string, message: string) =>
  problem('not_consistent', detail, [{ path: `body/${path}`, message }]);

function requireOnce(words: readonly string[], path: string, what: string): void {
  const again = words.findIndex((word, place) => words.indexOf(word) !== place);
  if (again >= 0) throw wrong(`Name each ${what} once.`, `${path}/${again}`, `repeats “${words[again]}”`);
}

/** Refuses inputs that cannot be computed: unknown or repeated options, and sets that cannot be had together. `at` leads to the input. */
export function requireInput({ options, together }: WhatIfInput, at = ''): void {
  const keys = options.map(({ key }) => key);
  requireOnce(keys, `${at}options`, 'option');
  requireOnce(together, `${at}together`, 'option of the set');
  for (const [place, { effects }] of options.entries())
    requireOnce(
      effects.map(({ cause }) => cause),
      `${at}options/${place}/effects`,
      'cause of an option',
    );
  for (const [place, key] of together.entries()) {
    const option = options.find((one) => one.key === key);
    if (!option)
      throw wrong('The set names options of the list only.', `${at}together/${place}`, `there is no “${key}”`);
    const against = option.excludes.find((other) => together.includes(other));
    if (against !== undefined)
      throw wrong(
        `“${key}” and “${against}” cannot be had together. Take one of them out of the set.`,
        `${at}together/${place}`,
        `excludes “${against}”`,
      );
  }
}

/** The filter of a scenario to be kept, which is of exactly one plant. */
export function filterOf(query: string): { filter: AnalysisFilter; plantId: string } {
  const search = new URLSearchParams(query);
  const words = Object.fromEntries([...new Set(search.keys())].map((key) => [key, search.getAll(key)]));
  const plain = Object.fromEntries(Object.entries(words).map(([key, all]) => [key, all.length === 1 ? all[0] : all]));
  const read = AnalysisFilter.safeParse(plain);
  if (!read.success)
    throw problem(
      'invalid_request',
      'The query string of the filter cannot be read.',
      read.error.issues.map(({ path, message }) => ({ path: 'body/query', message: `${path.join('.')} ${message}` })),
    );
  const [plantId, other] = read.data.plant ?? [];
  if (plantId === undefined || other !== undefined)
    throw wrong(
      'A scenario that is kept belongs to one plant. Choose the plant in the filter.',
      'query',
      'names one plant',
    );
  return { filter: read.data, plantId };
}
