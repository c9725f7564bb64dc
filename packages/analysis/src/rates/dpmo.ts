import { defaultConfidence, type Estimate, estimate, notComputable } from '../estimate.ts';
import { binomialInterval } from './binomial-interval.ts';
import { partsPerMillion } from './failure-rate.ts';

/**
 * Defects per million opportunities, with the exact binomial interval: an opportunity is defective or it is not.
 *
 * DPMO = 1e6 × defects / opportunities. Common practice takes one opportunity per terminal.
 *
 * @returns `no_production` without opportunities, `exceeds_production` when more defects than opportunities were reported
 */
export function dpmo(input: { defects: number; opportunities: number | null; confidence?: number }): Estimate {
  const { defects, opportunities, confidence = defaultConfidence } = input;
  if (opportunities === null || opportunities === 0) return notComputable('no_production');
  if (defects > opportunities) return notComputable('exceeds_production');
  const { low, high } = binomialInterval(defects, opportunities, confidence);
  return estimate((partsPerMillion * defects) / opportunities, {
    low: partsPerMillion * low,
    high: partsPerMillion * high,
    confidence,
  });
}
