import { defaultConfidence, type Estimate, estimate, notComputable } from '../estimate.ts';
import { sampleQuantile } from '../numeric/sample-quantile.ts';
import { drawEffectiveness, type GateCounts, gateCounts, type MatrixCounts } from './draw-effectiveness.ts';

export type MaturedGate = GateCounts & {
  /** stage number, from 1 */
  gate: number;
  /** found / (found + found later + still to come), 0 to 1 */
  effectiveness: Estimate;
};

/**
 * How much each gate finds of what reaches it, with the field faults that are still to be reported.
 *
 * The same measure as `gateEffectiveness`, which looks too good while young builds have not failed yet. Beta intervals with
 * the Jeffreys prior and the uncertainty of what is to come, from seeded draws (see `drawEffectiveness`).
 *
 * @returns `no_reports` for a gate that nothing reached
 */
export function maturedEffectiveness(
  matrix: MatrixCounts,
  options: { seed: number; draws?: number; confidence?: number },
): MaturedGate[] {
  const { seed, draws = 2000, confidence = defaultConfidence } = options;
  const drawn = drawEffectiveness(matrix, seed, draws);
  const tail = (1 - confidence) / 2;
  return gateCounts(matrix).map((counts, gate) => {
    const present = counts.found + counts.later + counts.toCome;
    if (present === 0) return { gate: gate + 1, ...counts, effectiveness: notComputable('no_reports') };
    const value = counts.found / present;
    const sorted = Float64Array.from(drawn, ({ effectiveness }) => effectiveness[gate]!).sort();
    const low = counts.found === 0 ? 0 : Math.min(value, sampleQuantile(sorted, tail));
    const high = counts.later + counts.toCome === 0 ? 1 : Math.max(value, sampleQuantile(sorted, 1 - tail));
    return { gate: gate + 1, ...counts, effectiveness: estimate(value, { low, high, confidence }) };
  });
}
