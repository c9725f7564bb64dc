/** One part of a prior for the ratio observed / expected: gamma with this shape and rate, in this share of combinations. */
export type GammaPart = { weight: number; shape: number; rate: number };

/** How many failures were seen, and how many were expected from exposure (or share), above 0. */
export type ObservedExpected = { observed: number; expected: number };
