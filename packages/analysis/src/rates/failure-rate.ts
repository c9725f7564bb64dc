import { defaultConfidence, type Estimate, estimate, notComputable } from '../estimate.ts';
import { poissonInterval } from './poisson-interval.ts';

export const partsPerMillion = 1_000_000;

/**
 * Failures per exposure, with the exact Poisson interval.
 *
 * value = per × failures / exposure; limits = per × Garwood limits / exposure (see `poissonInterval`).
 *
 * @param failures count, a whole number >= 0
 * @param exposure what was produced in the same period and scope (terminals inserted, units built, hours), > 0
 * @param per the scale: 1 000 000 gives ppm (the default), 1 the plain rate
 * @returns `no_production` when the exposure is null or 0; never a rate over a guessed denominator
 * @throws RangeError when failures is no count or exposure is negative
 */
export function failureRate(input: {
  failures: number;
  exposure: number | null;
  per?: number;
  confidence?: number;
}): Estimate {
  const { failures, exposure, per = partsPerMillion, confidence = defaultConfidence } = input;
  if (exposure !== null && !(exposure >= 0)) throw new RangeError(`exposure must be 0 or more, not ${exposure}.`);
  if (exposure === null || exposure === 0) return notComputable('no_production');
  const { low, high } = poissonInterval(failures, confidence);
  const scale = per / exposure;
  return estimate(failures * scale, { low: low * scale, high: high * scale, confidence });
}
