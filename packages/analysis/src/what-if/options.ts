/** Fraction of the faults of one cause that an option prevents: least, likeliest and most, 0 to 1. */
export type Effect = { cause: string; low: number; likely: number; high: number };

/** A prevention option; costs in minor units of one currency. */
export type PreventionOption = {
  key: string;
  onceCost: number;
  yearlyCost: number;
  effects: readonly Effect[];
  /** options that cannot be had together with this one */
  excludes?: readonly string[];
};

/** What the faults of one cause cost so far: sum and sum of squares over independent reports, minor units. */
export type CauseCost = { cause: string; sum: number; sumOfSquares: number };

/** Mean of a beta-PERT effect: (low + 4 likely + high) / 6. */
export const meanEffect = ({ low, likely, high }: Effect): number => (low + 4 * likely + high) / 6;

/** @throws RangeError unless 0 <= low <= likely <= high <= 1 and no cost is negative */
export function requireOptions(options: readonly PreventionOption[]): void {
  for (const { key, onceCost, yearlyCost, effects } of options) {
    if (!(onceCost >= 0 && yearlyCost >= 0)) throw new RangeError(`The costs of ${key} must be 0 or more.`);
    for (const { low, likely, high } of effects) {
      const inOrder = 0 <= low && low <= likely && likely <= high && high <= 1;
      if (!inOrder) throw new RangeError(`An effect of ${key} needs 0 <= low <= likely <= high <= 1.`);
    }
  }
}
