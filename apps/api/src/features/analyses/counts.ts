import type { Counts } from '#contracts/analyses.ts';
import { type Converter, shownParts } from './money.rules.ts';
import { bookedIn, estimatesIn, reportsIn, type Sums, terminalsIn } from './sums.ts';

/** Counts of every part and of the whole; the money of the parts adds up to that of the whole, which is rounded once. */
export function countsOf(parts: readonly (readonly Sums[])[], money: Converter): { parts: Counts[]; total: Counts } {
  const booked = shownParts(parts.map((rows) => money.exact(bookedIn(rows))));
  const estimates = shownParts(parts.map((rows) => money.exact(estimatesIn(rows))));
  const all = parts.flat();
  return {
    parts: parts.map((rows, place) => ({
      reports: reportsIn(rows),
      terminals: terminalsIn(rows),
      bookedMinor: booked.parts[place]!,
      estimateMinor: estimates.parts[place]!,
    })),
    total: {
      reports: reportsIn(all),
      terminals: terminalsIn(all),
      bookedMinor: booked.total,
      estimateMinor: estimates.total,
    },
  };
}
