import type { Counts } from '#contracts/analyses.ts';

/** What the matrix and the flow picture are weighed by. Booked and estimated money are never added. */
export const weights = ['reports', 'terminals', 'booked', 'estimated'] as const;
export type Weight = (typeof weights)[number];

const fields = {
  reports: 'reports',
  terminals: 'terminals',
  booked: 'bookedMinor',
  estimated: 'estimateMinor',
} as const satisfies Record<Weight, keyof Counts>;

export const weightOf = (counts: Counts, weight: Weight): number => counts[fields[weight]];
