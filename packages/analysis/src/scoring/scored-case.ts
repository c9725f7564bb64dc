/** What was said of a case, as one probability per class adding up to 1, and the place of the class that was confirmed. */
export type ScoredCase = { probabilities: readonly number[]; outcome: number };
