import { defaultConfidence, type Estimate, estimate, type NotComputable, notComputable } from '../estimate.ts';
import { chiSquareQuantile } from '../numeric/gamma-distribution.ts';
import { noncentralTShift } from '../numeric/noncentral-t.ts';
import { normalQuantile, normalUpperTail } from '../numeric/normal-distribution.ts';
import type { Moments } from './moments.ts';

export type AgainstMinimum = {
  /** (mean - minimum) / 3 s */
  capability: Estimate;
  /** fraction of terminals below the minimum, 0 to 1 */
  below: Estimate;
};

/**
 * Capability against a minimum, and the fraction below it, for normal forces in a stable process.
 *
 * Cpl = (mean - L) / (3 s), the fraction below L is Φ(-3 Cpl). Both intervals are exact: sqrt(n) (mean - L) / s is noncentral t with
 * shift sqrt(n) × 3 × true Cpl. Source: Owen D.B. (1968) Technometrics 10:445-478; reference `7-pullout-sample`.
 *
 * @param minimum lower specification limit, in the unit of the sample
 * @returns `too_few` with fewer than two values, `not_finite` when all are equal
 */
export function againstMinimum(
  { n, mean, deviation }: Moments,
  minimum: number,
  confidence = defaultConfidence,
): AgainstMinimum | NotComputable {
  if (n < 2) return notComputable('too_few');
  if (!(deviation > 0)) return notComputable('not_finite');
  const tail = (1 - confidence) / 2;
  const margin = (mean - minimum) / deviation;
  const t = margin * Math.sqrt(n);
  const limit = (probability: number): number => noncentralTShift(t, probability, n - 1) / Math.sqrt(n);
  const [low, high] = [limit(1 - tail), limit(tail)];
  return {
    capability: estimate(margin / 3, { low: low / 3, high: high / 3, confidence }),
    below: estimate(normalUpperTail(margin), { low: normalUpperTail(high), high: normalUpperTail(low), confidence }),
  };
}

/**
 * Capability between two limits: Cp = (U - L) / 6 s with its chi-square interval, Cpk = the smaller of the two margins / 3 s.
 *
 * Cpk's interval is Bissell's normal approximation. Sources: NIST/SEMATECH e-Handbook 6.1.6; Bissell A.F. (1990) Applied
 * Statistics 39:331-340 (from memory).
 */
export function betweenLimits(
  { n, mean, deviation }: Moments,
  limits: { lower: number; upper: number },
  confidence = defaultConfidence,
): { cp: Estimate; cpk: Estimate } | NotComputable {
  if (n < 2) return notComputable('too_few');
  if (!(deviation > 0)) return notComputable('not_finite');
  const tail = (1 - confidence) / 2;
  const freedom = n - 1;
  const cp = (limits.upper - limits.lower) / (6 * deviation);
  const cpk = Math.min(limits.upper - mean, mean - limits.lower) / (3 * deviation);
  const scaled = (probability: number): number => cp * Math.sqrt(chiSquareQuantile(probability, freedom) / freedom);
  const half = -normalQuantile(tail) * Math.sqrt(1 / (9 * n) + cpk ** 2 / (2 * freedom));
  return {
    cp: estimate(cp, { low: scaled(tail), high: scaled(1 - tail), confidence }),
    cpk: estimate(cpk, { low: cpk - half, high: cpk + half, confidence }),
  };
}
