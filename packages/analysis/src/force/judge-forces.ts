import { defaultConfidence, type Estimate, estimate, type NotComputable, notComputable } from '../estimate.ts';
import { binomialInterval } from '../rates/binomial-interval.ts';
import { andersonDarling, type NormalityTest } from './anderson-darling.ts';
import { againstMinimum } from './capability.ts';
import { type Moments, moments } from './moments.ts';
import { orderStatisticBound } from './order-statistic-bound.ts';
import { type Coverage, customaryCoverage, toleranceFactor } from './tolerance-bound.ts';

/** What the bound rests on: said on the screen beside it. */
export type ForceMethod = 'normal' | 'normal_untested' | 'log_normal' | 'order_statistic';

export type ForceJudgement = Moments & {
  smallest: number;
  /** values below the minimum in the sample itself */
  belowInSample: number;
  normality: NormalityTest | null;
  method: ForceMethod;
  /** with the confidence, at least the coverage of all terminals hold this force */
  bound: number | null;
  /** smallest sample that would give a bound by order statistics; null when there is a bound */
  needed: number | null;
  /** the bound is not below the minimum; null without a bound */
  meetsMinimum: boolean | null;
  /** against the minimum, in the scale of the method; not given by order statistics */
  capability: Estimate;
  /** fraction of terminals below the minimum, 0 to 1 */
  below: Estimate;
};

/** Normality is given up below this p. */
const normalityAlpha = 0.05;

/**
 * Retention or pull-out forces of one terminal, tool and date range against their minimum.
 *
 * Normal bound while the Anderson-Darling test does not reject at 5 %; else the same on logarithms when it does not reject those;
 * else order statistics, which need 59 values for 95/95. Below eight values nothing can be tested and normality is
 * assumed (`normal_untested`). Values should be in the order of a stable process: see `runChart`.
 * Source of the order of methods: common practice; a test before the choice makes the confidence approximate.
 *
 * @param forces above 0, in the unit of the minimum
 * @returns `too_few` with fewer than two values, `not_finite` when all are equal
 */
export function judgeForces(
  forces: readonly number[],
  minimum: number,
  options: { coverage?: Coverage; confidence?: number } = {},
): ForceJudgement | NotComputable {
  const { coverage = customaryCoverage, confidence = defaultConfidence } = options;
  if (forces.some((force) => !(force > 0))) throw new RangeError('Forces must be above 0.');
  const sample = moments(forces);
  if (sample.n < 2) return notComputable('too_few');
  if (!(sample.deviation > 0)) return notComputable('not_finite');
  const logs = forces.map(Math.log);
  const normality = andersonDarling(forces);
  const isNormal = normality === null || normality.p >= normalityAlpha;
  const isLogNormal = !isNormal && minimum > 0 && andersonDarling(logs)!.p >= normalityAlpha;
  const belowInSample = forces.filter((force) => force < minimum).length;
  const shared = { ...sample, smallest: Math.min(...forces), belowInSample, normality };

  if (isNormal || isLogNormal) {
    const scaled = isNormal ? sample : moments(logs);
    const limit = scaled.mean - toleranceFactor(sample.n, coverage) * scaled.deviation;
    const bound = isNormal ? limit : Math.exp(limit);
    const margins = againstMinimum(scaled, isNormal ? minimum : Math.log(minimum), confidence);
    const none = notComputable('not_finite');
    const method: ForceMethod = isLogNormal ? 'log_normal' : normality === null ? 'normal_untested' : 'normal';
    return {
      ...shared,
      method,
      bound,
      needed: null,
      meetsMinimum: bound >= minimum,
      capability: 'reason' in margins ? none : margins.capability,
      below: 'reason' in margins ? none : margins.below,
    };
  }
  const bound = orderStatisticBound(forces, coverage);
  return {
    ...shared,
    method: 'order_statistic',
    bound: bound.value,
    needed: bound.reason === null ? null : bound.needed,
    meetsMinimum: bound.value === null ? null : bound.value >= minimum,
    capability: notComputable('too_few'),
    below: estimate(belowInSample / sample.n, binomialInterval(belowInSample, sample.n, confidence)),
  };
}
