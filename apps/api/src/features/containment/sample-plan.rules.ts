import { acceptanceProbability } from '#analysis/sampling/acceptance-probability.ts';
import { samplingPlan } from '#analysis/sampling/iso-2859-plan.ts';
import type { AcceptanceQualityLimit } from '#analysis/sampling/iso-2859-tables.ts';
import { sampleToShow } from '#analysis/sampling/sample-to-show.ts';
import { upperLimitAfterSample } from '#analysis/sampling/upper-limit-after-sample.ts';
import type { planSample as contract, SamplePlan } from '#contracts/containment.ts';
import type { Output } from '#contracts/shared/endpoint.ts';

const fractions = [0.001, 0.005, 0.01, 0.02, 0.05, 0.1];

/** A plan for the parts at one place, and what it does and does not show. */
export function planOf({ lot, limit, level }: Output<NonNullable<typeof contract.query>>): SamplePlan {
  const plan = samplingPlan(lot, Number(limit) as AcceptanceQualityLimit, level);
  const passes = plan.everyItem
    ? []
    : fractions.map((fraction) => ({
        fraction,
        probability: acceptanceProbability(plan.sampleSize, plan.accept, fraction),
      }));
  return {
    ...plan,
    passes,
    afterZero: upperLimitAfterSample(0, plan.sampleSize, lot),
    toShow: fractions.map((fraction) => ({ fraction, sampleSize: sampleToShow(fraction, lot) })),
  };
}
