import { type ClosedInterval, defaultConfidence } from '../estimate.ts';
import { binomialInterval } from '../rates/binomial-interval.ts';

/** A probability that was stated, and whether it came true. */
export type Statement = { said: number; came: boolean };

export type CalibrationBin = {
  /** stated probabilities from `from` up to but not including `to` (1 belongs to the last bin) */
  from: number;
  to: number;
  cases: number;
  /** mean probability stated */
  said: number;
  /** fraction that came true, with its Clopper-Pearson interval */
  came: { value: number; interval: ClosedInterval };
};

/**
 * Does what was said with 70 % come true in 70 % of the cases? Bins of equal width, empty ones left out.
 *
 * error = Σ n_b/n |said_b - came_b| (expected calibration error: Naeini M.P. et al. 2015, AAAI, from memory);
 * reliability = Σ n_b/n (said_b - came_b)² (Murphy A.H. 1973, J. Applied Meteorology 12:595-600).
 * Both are above 0 by chance alone when cases are few.
 *
 * @returns null for both without cases
 */
export function calibration(
  statements: readonly Statement[],
  options: { bins?: number; confidence?: number } = {},
): { bins: CalibrationBin[]; error: number | null; reliability: number | null } {
  const { bins: count = 10, confidence = defaultConfidence } = options;
  const grouped = Array.from({ length: count }, (): Statement[] => []);
  for (const statement of statements) {
    if (!(statement.said >= 0 && statement.said <= 1)) {
      throw new RangeError(`A probability must lie in 0 to 1, not ${statement.said}.`);
    }
    grouped[Math.min(count - 1, Math.floor(statement.said * count))]!.push(statement);
  }
  const bins = grouped.flatMap((members, place): CalibrationBin[] => {
    const cases = members.length;
    if (cases === 0) return [];
    const said = members.reduce((sum, statement) => sum + statement.said, 0) / cases;
    const hits = members.filter(({ came }) => came).length;
    const came = { value: hits / cases, interval: binomialInterval(hits, cases, confidence) };
    return [{ from: place / count, to: (place + 1) / count, cases, said, came }];
  });
  const weighted = (distance: (gap: number) => number): number | null =>
    statements.length === 0
      ? null
      : bins.reduce((sum, { cases, said, came }) => sum + (cases / statements.length) * distance(said - came.value), 0);
  return { bins, error: weighted(Math.abs), reliability: weighted((gap) => gap * gap) };
}
