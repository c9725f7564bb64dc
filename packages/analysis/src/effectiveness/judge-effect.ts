import type { Estimate, Interval, Reason } from '../estimate.ts';
import { failureRate } from '../rates/failure-rate.ts';
import { type CountedExposure, type RateRatio, rateRatio } from '../rates/rate-ratio.ts';
import { evidenceAbove, evidenceBelow } from './effect-evidence.ts';
import type { Counted } from './evidence-of-lower-rate.ts';

export type EffectVerdict = 'held' | 'not_shown_yet' | 'did_not_hold';

/** What was promised before the data came. */
export type Promised = {
  before: CountedExposure;
  /** fraction above 0, at most 1 */
  reduction: number;
  /** exposure after that was planned for the proof; null when none was */
  plannedExposure: number | null;
  /** one-sided risk of each claim over all looks together; 0.05 unless given */
  alpha?: number;
};

export type EffectJudgement = {
  verdict: EffectVerdict;
  /** the rate is shown to be lower than before */
  reductionShown: boolean;
  /** the rate is shown to be higher than promised; with `reductionShown`: better than before, yet not what was promised */
  promiseExcluded: boolean;
  /** fewer data than planned, or no plan: to be said beside any verdict */
  fewerThanPlanned: boolean;
  /** failures per exposure, exact intervals */
  rateBefore: Estimate;
  rateAfter: Estimate;
  /** after over before; exact test and interval for one look */
  ratio: RateRatio;
  /** after over before; holds over all looks. Below 1: reduction shown; above the promised ratio: promise excluded */
  ratioOverAllLooks: Interval | null;
  /** e-values; a claim is made at `needed` = 1 / alpha */
  evidence: { ofReduction: number; againstPromise: number; needed: number } | null;
  reason: Reason | null;
};

/**
 * Whether a fix held, as far as the data so far show it; to be asked as often as one likes.
 *
 * `held`: a lower rate than before is shown (always-valid bound, see `evidenceOfLowerRate`) and the promise is not excluded.
 * `did_not_hold`: a rate above the promised one is shown in the same way. Otherwise `not_shown_yet`: no verdict is ever read
 * from an absence of data. Field data: give mature exposures (see `matureExposure`).
 *
 * @param after failures and exposure since the clean point
 * @returns `reason` tells why nothing can be said yet: `no_production` or `no_reports` (before and after both 0)
 */
export function judgeEffect(promised: Promised, after: CountedExposure): EffectJudgement {
  const { before, reduction, plannedExposure, alpha = 0.05 } = promised;
  if (!(reduction > 0 && reduction <= 1)) {
    throw new RangeError(`reduction must lie above 0 and be at most 1, not ${reduction}.`);
  }
  const rateOf = (counted: CountedExposure): Estimate => failureRate({ ...counted, per: 1 });
  const ratio = rateRatio(after, before, 1 - 2 * alpha);
  const shared = {
    fewerThanPlanned: plannedExposure === null || !after.exposure || after.exposure < plannedExposure,
    rateBefore: rateOf(before),
    rateAfter: rateOf(after),
    ratio,
  };
  if (!before.exposure || !after.exposure || ratio.interval === null) {
    return {
      ...shared,
      verdict: 'not_shown_yet',
      reductionShown: false,
      promiseExcluded: false,
      ratioOverAllLooks: null,
      evidence: null,
      reason: ratio.reason ?? 'no_production',
    };
  }
  const first: Counted = { failures: before.failures, exposure: before.exposure };
  const second: Counted = { failures: after.failures, exposure: after.exposure };
  const evidence = {
    ofReduction: evidenceBelow(first, second, 1, 1 - reduction),
    againstPromise: evidenceAbove(first, second, 1 - reduction),
    needed: 1 / alpha,
  };
  const reductionShown = evidence.ofReduction >= evidence.needed;
  const promiseExcluded = evidence.againstPromise >= evidence.needed;
  return {
    ...shared,
    verdict: promiseExcluded ? 'did_not_hold' : reductionShown ? 'held' : 'not_shown_yet',
    reductionShown,
    promiseExcluded,
    ratioOverAllLooks: intervalOverAllLooks(first, second, 1 - reduction, alpha),
    evidence,
    reason: null,
  };
}

/** All ratios against which there is less evidence than 1 / alpha; bisection on the logarithm. */
function intervalOverAllLooks(before: Counted, after: Counted, promised: number, alpha: number): Interval {
  const border = (isInside: (ratio: number) => boolean, inside: number, outside: number): number => {
    let [yes, no] = [inside, outside];
    for (let round = 0; round < 60; round++) {
      const middle = (yes + no) / 2;
      if (isInside(Math.exp(middle))) yes = middle;
      else no = middle;
    }
    return Math.exp(no);
  };
  const observed = Math.log((after.failures + 0.5) / after.exposure / ((before.failures + 0.5) / before.exposure));
  const inLow = (ratio: number) => evidenceAbove(before, after, ratio) < 1 / alpha;
  const inHigh = (ratio: number) => evidenceBelow(before, after, ratio, promised) < 1 / alpha;
  return {
    low: after.failures === 0 || inLow(Math.exp(observed - 60)) ? 0 : border(inLow, observed, observed - 60),
    high: before.failures === 0 || inHigh(Math.exp(observed + 60)) ? null : border(inHigh, observed, observed + 60),
    confidence: 1 - 2 * alpha,
  };
}
