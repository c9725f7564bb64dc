import { betaCdf } from '../numeric/beta-distribution.ts';
import { gammaCdf } from '../numeric/gamma-distribution.ts';
import { type Counted, evidenceOfLowerRate } from './evidence-of-lower-rate.ts';

/** How a reduction is to be shown. `one`: exact test, looked at once; `any`: the bound that allows for looking at any time. */
export type Proof = {
  looks: 'one' | 'any';
  /** rate after over rate before that was promised, 0 to 1 (below 1) */
  promisedRatio: number;
  /** one-sided risk of calling a rate lower that is not, for example 0.05 */
  alpha: number;
};

/** Whether the rate after is shown to be lower than before: by the exact conditional test, or by the always-valid bound. */
export function isLowerShown(before: Counted, after: Counted, { looks, promisedRatio, alpha }: Proof): boolean {
  if (before.failures === 0) return false;
  if (looks === 'any') return evidenceOfLowerRate(after, before, promisedRatio) >= 1 / alpha;
  const beforeShare = before.exposure / (before.exposure + after.exposure);
  return betaCdf(beforeShare, before.failures, after.failures + 1) <= alpha;
}

/** Most failures over this exposure that would still show a lower rate, or -1 when even none would. */
function mostFailures(before: Counted, exposure: number, proof: Proof): number {
  const shown = (failures: number) => isLowerShown(before, { failures, exposure }, proof);
  if (!shown(0)) return -1;
  let [yes, no] = [0, 1];
  while (shown(no)) [yes, no] = [no, no * 2];
  while (no - yes > 1) {
    const middle = Math.floor((yes + no) / 2);
    if (shown(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}

/**
 * Chance that a lower rate will be shown after a given exposure, when the rate after is what it is assumed to be.
 *
 * P(X <= c), X ~ Poisson(rate after × exposure), c the most failures that still show it. The failures before are taken as
 * counted, not as random. With looks at any time this is the chance at the last look alone, so at least that of all looks.
 * Source: Przyborowski J. and Wilenski H. (1940) Biometrika 31:313-323, by full enumeration (reference `2-power-halved-*`).
 *
 * @param rateAfter failures per unit of exposure assumed after the change
 */
export function powerToShow(before: Counted, exposureAfter: number, rateAfter: number, proof: Proof): number {
  const most = mostFailures(before, exposureAfter, proof);
  return most < 0 ? 0 : 1 - gammaCdf(rateAfter * exposureAfter, most + 1);
}
