import { allStages } from '../escapes/gates-passed.ts';
import type { Reason } from '../estimate.ts';

/** Faults of one plant that share stage found and first able gate, so one row may stand for many reports. */
export type FoundCost = {
  found: number;
  firstGate: number;
  terminals: number;
  /** what they cost where they were found, in minor units */
  minor: number;
  /** standard cost of one such terminal at its first able gate, in minor units; null when none is kept */
  minorPerTerminalAtFirstGate: number | null;
};

export type AvoidableCost =
  | { minor: number; reason: null; withoutStandardCost: { terminals: number; minor: number } }
  | { minor: null; reason: Reason; withoutStandardCost: { terminals: number; minor: number } };

/**
 * The first gate able to see a fault: the first stage of the plant that is neither before the stage that made the fault nor
 * before the first stage whose checks can see it. Common practice, no source.
 *
 * @returns null when the plant has no such stage
 */
export function firstAbleGate(
  fault: { origin: number; visibleFrom: number | null },
  gates: readonly number[] = allStages,
): number | null {
  const earliest = Math.max(fault.origin, fault.visibleFrom ?? fault.origin);
  const able = gates.filter((gate) => gate >= earliest);
  return able.length ? Math.min(...able) : null;
}

/**
 * Avoidable cost: what faults cost where they were found, less what they would have cost at the first gate able to see
 * them. Common practice, no source.
 *
 * Sum over rows of minor - terminals × standard cost; 0 for what was found at its first gate or earlier. A row that cost
 * less than the standard counts negative, so that the parts of any split add up to the whole.
 *
 * @returns minor units of the rows that have a standard cost, and beside it what was left out for want of one; `no_reports`
 *   without rows, `no_standard_cost` when every late row lacks one
 */
export function avoidableCost(rows: readonly FoundCost[]): AvoidableCost {
  const late = rows.filter((row) => row.found > row.firstGate);
  const withoutStandardCost = { terminals: 0, minor: 0 };
  let minor = 0;
  let covered = rows.length - late.length;
  for (const row of late) {
    if (row.minorPerTerminalAtFirstGate === null) {
      withoutStandardCost.terminals += row.terminals;
      withoutStandardCost.minor += row.minor;
    } else {
      minor += row.minor - row.terminals * row.minorPerTerminalAtFirstGate;
      covered += 1;
    }
  }
  if (rows.length === 0) return { minor: null, reason: 'no_reports', withoutStandardCost };
  if (covered === 0) return { minor: null, reason: 'no_standard_cost', withoutStandardCost };
  return { minor, reason: null, withoutStandardCost };
}
