import { solveLinear } from '../numeric/solve-linear.ts';

export type AbsorbingChain = {
  /** expected visits to each transient state (column) from each (row): (I - Q)⁻¹ */
  visits: number[][];
  /** expected steps until absorbed, from each transient state */
  steps: number[];
  /** probability of ending in each absorbing state (column) from each transient one (row) */
  absorbed: number[][];
};

/**
 * Absorbing Markov chain: N = (I - Q)⁻¹, t = N 1, B = N R.
 * Source: Grinstead C.M. and Snell J.L., Introduction to Probability, section 11.2.
 *
 * @param moves Q, probabilities between transient states
 * @param ends R, probabilities from transient to absorbing states; each row of Q and R together adds up to 1
 * @throws RangeError when some state is never left
 */
export function absorbingChain(
  moves: readonly (readonly number[])[],
  ends: readonly (readonly number[])[],
): AbsorbingChain {
  const stays = moves.map((row, i) => row.map((probability, j) => (i === j ? 1 : 0) - probability));
  const unit = moves.map((_, i) => moves.map((__, j) => (i === j ? 1 : 0)));
  const visits = solveLinear(stays, unit);
  if (!visits) throw new RangeError('The chain has a state that is never left.');
  return {
    visits,
    steps: visits.map((row) => row.reduce((sum, count) => sum + count, 0)),
    absorbed: visits.map((row) =>
      (ends[0] ?? []).map((_, end) => row.reduce((sum, count, state) => sum + count * ends[state]![end]!, 0)),
    ),
  };
}
