import { defaultConfidence } from '../estimate.ts';
import { normalQuantile } from '../numeric/normal-distribution.ts';
import { requireConfidence } from '../numeric/require-count.ts';

/** Time in service; `failed: false` when still good at that time (right censored). Of one unit, unless `units` says of how many. */
export type Lifetime = { time: number; failed: boolean; units?: number };

export type SurvivalStep = {
  time: number;
  atRisk: number;
  failures: number;
  /** fraction still good after this time */
  survival: number;
  standardError: number;
  /** null where nothing is left or nothing has failed, so that no interval can be given */
  interval: { low: number; high: number; confidence: number } | null;
};

/**
 * Kaplan-Meier estimate of the fraction that survives, at every time with a failure.
 *
 * S(t) = Π (1 - d/n); standard error by Greenwood, S sqrt(Σ d / (n (n - d))); interval on the scale ln(-ln S), which stays in
 * 0 to 1. Units censored at the time of a failure count as still at risk there.
 * Sources: Kaplan E.L. and Meier P. (1958) JASA 53:457-481; Kalbfleisch J.D. and Prentice R.L. (1980), section 1.3, for the
 * interval (from memory).
 *
 * @param lifetimes times >= 0 in any one unit
 */
export function kaplanMeier(lifetimes: readonly Lifetime[], confidence = defaultConfidence): SurvivalStep[] {
  requireConfidence(confidence);
  const z = -normalQuantile((1 - confidence) / 2);
  const sorted = lifetimes.toSorted((a, b) => a.time - b.time);
  const steps: SurvivalStep[] = [];
  let survival = 1;
  let greenwood = 0;
  let left = sorted.reduce((sum, { units = 1 }) => sum + units, 0);
  for (let next = 0; next < sorted.length; ) {
    const { time } = sorted[next]!;
    const atRisk = left;
    let failures = 0;
    for (; next < sorted.length && sorted[next]!.time === time; next++) {
      const { units = 1, failed } = sorted[next]!;
      left -= units;
      if (failed) failures += units;
    }
    if (failures === 0) continue;
    survival *= 1 - failures / atRisk;
    greenwood += failures / (atRisk * (atRisk - failures));
    if (survival === 0) {
      steps.push({ time, atRisk, failures, survival, standardError: 0, interval: null });
      continue;
    }
    const spread = Math.exp((z * Math.sqrt(greenwood)) / -Math.log(survival));
    const interval = { low: survival ** spread, high: survival ** (1 / spread), confidence };
    steps.push({ time, atRisk, failures, survival, standardError: survival * Math.sqrt(greenwood), interval });
  }
  return steps;
}
