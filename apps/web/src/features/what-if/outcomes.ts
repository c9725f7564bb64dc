/** The sets of a result as rows, in the order in which people read them. Pure. */
import type { Outcome, WhatIfInput, WhatIfResult } from '#contracts/what-if.ts';

export interface OutcomeRow extends Outcome {
  id: string;
  role: 'alone' | 'together' | 'best';
}

const sameSet = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((key) => b.includes(key));

/** Each option alone, then the set chosen and the best set, where they are more than one of the rows before. */
export function outcomeRows({ alone, together, best }: WhatIfResult): OutcomeRow[] {
  const rows: OutcomeRow[] = alone.map((outcome) => ({ ...outcome, id: outcome.keys.join(), role: 'alone' }));
  const isNew = ({ keys }: Outcome) => !rows.some((row) => sameSet(row.keys, keys));
  if (isNew(together)) rows.push({ ...together, id: 'together', role: 'together' });
  if (best && isNew(best)) rows.push({ ...best, id: 'best', role: 'best' });
  return rows;
}

export const isBest = (row: Outcome, { best }: WhatIfResult): boolean => best !== null && sameSet(row.keys, best.keys);

export const namesOf = (keys: readonly string[], { options }: WhatIfInput): string[] =>
  keys.map((key) => options.find((option) => option.key === key)?.name ?? key);
