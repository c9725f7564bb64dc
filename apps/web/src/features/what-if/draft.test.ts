import { describe, expect, it } from 'vitest';
import { WhatIfInput } from '#contracts/what-if.ts';
import { draftOf, emptyDraft, inputOf, newOption } from './draft.ts';

const input = WhatIfInput.parse({
  options: [
    {
      key: 'o1',
      kind: 'secondary_lock',
      name: 'Lock',
      onceMinor: 5000,
      yearlyMinor: 100,
      effects: [{ cause: 'partial_seat', low: 0.07, likely: 0.29, high: 0.575 }],
      excludes: ['o2'],
    },
    {
      key: 'o2',
      kind: 'own',
      name: 'Training',
      onceMinor: 0,
      yearlyMinor: 0,
      effects: [{ cause: 'handling', low: 0, likely: 0.1, high: 1 }],
    },
  ],
  together: ['o2'],
  horizonYears: 2.5,
  budgetMinor: 10_000,
});

describe('a scenario as it is typed', () => {
  it('is the same when it comes back, to the percent', () => {
    expect(WhatIfInput.parse(inputOf(draftOf(input)))).toEqual(input);
  });
  it('is refused at the fields that are still empty', () => {
    const read = WhatIfInput.safeParse(inputOf(emptyDraft('Check')));
    const paths = read.error?.issues.map(({ path }) => path.join('.'));
    expect(paths).toEqual(expect.arrayContaining(['options.0.onceMinor', 'options.0.effects.0.low']));
  });
  it('drops exclusions of options that are gone, and never uses a key twice', () => {
    const draft = draftOf(input);
    const without = { ...draft, options: draft.options.slice(0, 1) };
    expect(inputOf(without).options[0]?.excludes).toEqual([]);
    expect(newOption(draft.options, 'lead_trays', 'Trays').key).toBe('o3');
  });
});
