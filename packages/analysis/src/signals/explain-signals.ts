import { gammaCdf } from '../numeric/gamma-distribution.ts';
import type { Signal } from './find-signals.ts';

/** What two combinations have in common: the failures in both, and those expected in both. */
export type Overlap = { observed: number; expected: number };

export type ExplainedSignal = Signal & {
  /** key of the stronger signal that leaves nothing beyond noise here; null for a signal of its own */
  explainedBy: string | null;
};

/**
 * Tells signals of their own from echoes: a bad tool also makes its plant, its part and its lots look bad.
 *
 * Going down the ranking, a signal is an echo of an earlier one when, without what the two share, P(X >= rest) > alpha.
 * The stronger one is the likelier origin, not the proven one. Common practice (stratification), no source.
 *
 * @param ranked as `findSignals` returns them
 * @param overlap of two keys; null when unknown, which explains nothing
 */
export function explainSignals(
  ranked: readonly Signal[],
  overlap: (key: string, otherKey: string) => Overlap | null,
  alpha = 0.05,
): ExplainedSignal[] {
  const own: Signal[] = [];
  return ranked.map((signal) => {
    const origin = own.find((other) => {
      const shared = overlap(signal.key, other.key);
      if (!shared || shared.observed === 0) return false;
      const observed = signal.observed - shared.observed;
      const expected = Math.max(0, signal.expected - shared.expected);
      return observed === 0 || (expected > 0 && gammaCdf(expected, observed) > alpha);
    });
    if (!origin) own.push(signal);
    return { ...signal, explainedBy: origin?.key ?? null };
  });
}
