import { defaultConfidence, type Estimate, estimate, notComputable } from '../estimate.ts';
import { seededRandom } from '../numeric/random.ts';
import { requireConfidence, requireCount } from '../numeric/require-count.ts';
import { sampleQuantile } from '../numeric/sample-quantile.ts';
import { gammaVariate } from '../numeric/variates.ts';
import { binomialInterval } from './binomial-interval.ts';

/** Units that entered a step, and those of them that did not pass it right the first time (reworked or scrapped). */
export type StepYield = { units: number | null; notRightFirstTime: number };

function reasonAgainst({ units, notRightFirstTime }: StepYield): 'no_production' | 'exceeds_production' | null {
  requireCount('notRightFirstTime', notRightFirstTime);
  if (units === null || units === 0) return 'no_production';
  requireCount('units', units);
  return notRightFirstTime > units ? 'exceeds_production' : null;
}

/**
 * First-pass yield of one step: the fraction of units that pass without rework or scrap, with the Clopper-Pearson interval.
 *
 * @returns `no_production` without units, `exceeds_production` when more units failed than were reported as produced
 */
export function firstPassYield(step: StepYield, confidence = defaultConfidence): Estimate {
  const reason = reasonAgainst(step);
  if (reason) return notComputable(reason);
  const passed = step.units! - step.notRightFirstTime;
  return estimate(passed / step.units!, binomialInterval(passed, step.units!, confidence));
}

/**
 * Rolled throughput yield: the product of the steps' first-pass yields, the chance of a unit passing all of them untouched.
 *
 * The interval comes from seeded draws of each step's yield from Beta(passed + 1/2, failed + 1/2) (Jeffreys prior), which
 * stays honest at steps without a single failure. Assumes that steps fail independently.
 * Sources (from memory): Harry M. and Schroeder R. (2000) Six Sigma, for the product; Brown L.D., Cai T.T. and DasGupta A.
 * (2001) Statistical Science 16:101-133, for the Jeffreys interval.
 *
 * @returns the reason of the first step whose yield cannot be computed; `no_production` without steps
 */
export function rolledThroughputYield(
  steps: readonly StepYield[],
  options: { seed: number; draws?: number; confidence?: number },
): Estimate {
  const { seed, draws = 4000, confidence = defaultConfidence } = options;
  requireConfidence(confidence);
  if (steps.length === 0) return notComputable('no_production');
  for (const step of steps) {
    const reason = reasonAgainst(step);
    if (reason) return notComputable(reason);
  }
  const random = seededRandom(seed);
  const counts = steps.map((step) => ({
    passed: step.units! - step.notRightFirstTime,
    failed: step.notRightFirstTime,
  }));
  const product = counts.reduce((yielded, { passed, failed }) => yielded * (passed / (passed + failed)), 1);
  const sorted = Float64Array.from({ length: draws }, () =>
    counts.reduce((yielded, { passed, failed }) => {
      const good = gammaVariate(passed + 0.5, random);
      return yielded * (good / (good + gammaVariate(failed + 0.5, random)));
    }, 1),
  ).sort();
  const tail = (1 - confidence) / 2;
  const low = Math.min(product, sampleQuantile(sorted, tail));
  const high = Math.max(product, sampleQuantile(sorted, 1 - tail));
  return estimate(product, { low, high, confidence });
}
