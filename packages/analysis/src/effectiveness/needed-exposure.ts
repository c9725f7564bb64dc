import type { Reason } from '../estimate.ts';
import type { CountedExposure } from '../rates/rate-ratio.ts';
import type { Counted } from './evidence-of-lower-rate.ts';
import { isLowerShown, type Proof, powerToShow } from './power-to-show.ts';

export type NeededExposure =
  | {
      /** in the unit of the exposure before */
      value: number;
      /** most failures after that still show the reduction at that exposure */
      mostFailures: number;
      /** failures to be expected after when the promise is kept */
      expectedFailures: number;
      /** chance of showing it there when the promise is kept, at least the one asked for */
      power: number;
      reason: null;
    }
  | { value: null; reason: Reason };

/** Beyond this many failures after, more exposure no longer helps: the failures before are what is too few. */
const mostWorthWaitingFor = 2 ** 20;

/**
 * Exposure after a change that shows a promised reduction, if the promise is kept, with the chance asked for.
 *
 * For each count c the smallest exposure at which c failures show a lower rate; the answer is the first c whose exposure
 * gives the power. The rate before is taken at its counted value.
 * Sources: power of the conditional test (references `3-halving-known-baseline`, `3-zero-after-needed-exposure`).
 *
 * @param promisedReduction fraction above 0, at most 1: 0.5 halves the rate, 1 ends the failures
 * @returns `no_production` without an exposure before, `no_reports` without a failure before, `too_few` when no exposure is
 *   enough because the failures before are too few
 */
export function neededExposure(
  before: CountedExposure,
  promisedReduction: number,
  options: { looks?: Proof['looks']; alpha?: number; power?: number } = {},
): NeededExposure {
  const { looks = 'any', alpha = 0.05, power: wanted = 0.8 } = options;
  if (!(promisedReduction > 0 && promisedReduction <= 1)) {
    throw new RangeError(`promisedReduction must lie above 0 and be at most 1, not ${promisedReduction}.`);
  }
  if (!before.exposure) return { value: null, reason: 'no_production' };
  if (before.failures === 0) return { value: null, reason: 'no_reports' };
  const known: Counted = { failures: before.failures, exposure: before.exposure };
  const proof: Proof = { looks, promisedRatio: 1 - promisedReduction, alpha };
  const rateAfter = (proof.promisedRatio * known.failures) / known.exposure;

  const plan = (failures: number) => {
    const exposure = smallestExposure(known, failures, proof);
    return { failures, exposure, power: powerToShow(known, exposure, rateAfter, proof) };
  };
  let best = plan(0);
  let low = 0;
  while (best.power < wanted) {
    if (best.failures > mostWorthWaitingFor) return { value: null, reason: 'too_few' };
    low = best.failures;
    best = plan(best.failures * 2 + 1);
  }
  while (best.failures - low > 1) {
    const middle = plan(Math.floor((low + best.failures) / 2));
    if (middle.power >= wanted) best = middle;
    else low = middle.failures;
  }
  return {
    value: best.exposure,
    mostFailures: best.failures,
    expectedFailures: rateAfter * best.exposure,
    power: best.power,
    reason: null,
  };
}

/** The exposure from which this many failures show a lower rate, by bisection on its logarithm. */
function smallestExposure(before: Counted, failures: number, proof: Proof): number {
  let low = Math.log(before.exposure) - 20;
  let high = Math.log(before.exposure) + 40;
  while (high - low > 1e-13 * Math.max(1, Math.abs(high))) {
    const middle = (low + high) / 2;
    if (isLowerShown(before, { failures, exposure: Math.exp(middle) }, proof)) high = middle;
    else low = middle;
    if (middle === low && middle === high) break;
  }
  return Math.exp(high);
}
