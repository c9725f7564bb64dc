import { defaultConfidence, type Estimate, estimate, notComputable } from '../estimate.ts';
import { binomialInterval } from '../rates/binomial-interval.ts';

export type GateEffectiveness = {
  /** stage number, from 1 */
  gate: number;
  found: number;
  /** faults made at or before this stage and found here or later */
  present: number;
  /** fraction removed here of what was present, 0 to 1 */
  effectiveness: Estimate;
  /** fraction of the faults made here that were found here, 0 to 1 */
  containment: Estimate;
};

const proportion = (events: number, trials: number, confidence: number): Estimate =>
  trials === 0 ? notComputable('no_reports') : estimate(events / trials, binomialInterval(events, trials, confidence));

/**
 * How much each gate removes of the faults that reach it, with Clopper-Pearson intervals, and all gates together.
 *
 * effectiveness(g) = found at g / (found at g or later, made at g or before); containment counts only faults made at g:
 * two meanings that are often mixed up. The last stage (field) is no gate: what it finds has escaped them all.
 * Source: Kan S.H. (2002), chapter 6, defect removal effectiveness. Faults not yet reported from the field make every gate
 * look better than it is; faults of unknown origin or found before their origin must be left out and their number shown.
 *
 * @param counts independent reports, counts[origin - 1][found - 1], square
 * @returns `no_reports` where nothing was present
 */
export function gateEffectiveness(
  counts: readonly (readonly number[])[],
  confidence = defaultConfidence,
): { gates: GateEffectiveness[]; overall: Estimate } {
  const stages = counts.length;
  const between = (origins: [number, number], founds: [number, number]): number => {
    let sum = 0;
    for (let origin = origins[0]; origin <= origins[1]; origin++) {
      for (let found = Math.max(origin, founds[0]); found <= founds[1]; found++) sum += counts[origin]![found]!;
    }
    return sum;
  };
  const last = stages - 1;
  const gates = Array.from({ length: last }, (_, gate) => {
    const found = between([0, gate], [gate, gate]);
    const present = between([0, gate], [gate, last]);
    return {
      gate: gate + 1,
      found,
      present,
      effectiveness: proportion(found, present, confidence),
      containment: proportion(counts[gate]![gate]!, between([gate, gate], [gate, last]), confidence),
    };
  });
  const all = between([0, last], [0, last]);
  return { gates, overall: proportion(all - between([0, last], [last, last]), all, confidence) };
}
