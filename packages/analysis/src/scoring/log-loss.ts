import { defaultConfidence, type Estimate, notComputable } from '../estimate.ts';
import { meanInterval } from '../numeric/mean-interval.ts';
import type { ScoredCase } from './scored-case.ts';

/**
 * Log loss: the mean over cases of -ln(probability given to what was confirmed), in nats; 0 is perfect. Interval by
 * Student's t over the cases. Source: Good I.J. (1952) J. R. Statist. Soc. B 14:107-114.
 *
 * @returns `not_finite` when something was confirmed that had been called impossible
 */
export function logLoss(cases: readonly ScoredCase[], confidence = defaultConfidence): Estimate {
  const losses = cases.map(({ probabilities, outcome }) => -Math.log(probabilities[outcome]!));
  return losses.every(Number.isFinite) ? meanInterval(losses, confidence) : notComputable('not_finite');
}
