/** Figures of the analyses in the words of the contract. */
import type { z } from 'zod';
import type { Change as Judged } from '#analysis/comparisons/verdict.ts';
import { type Estimate, estimate, type Interval, notComputable } from '#analysis/estimate.ts';
import { type WeightedSum, weightedPoissonInterval } from '#analysis/rates/weighted-poisson-interval.ts';
import type { Change } from '#contracts/shared/change.ts';

const perMillion = 1_000_000;

/** Bars called moved that did not move, on average at most. */
export const falseDiscoveryRate = 0.1;

export const isFiniteInterval = ({ low, high }: Interval) =>
  Number.isFinite(low) && (high === null || Number.isFinite(high));

/** A sum of reports, terminals or money with the interval of its expected value. */
export function sumEstimate(value: number, weights: WeightedSum): Estimate {
  const interval = weightedPoissonInterval(weights);
  return isFiniteInterval(interval) ? estimate(value, interval) : notComputable('not_finite');
}

/** Failed terminals per million inserted. */
export function dpmoEstimate(terminals: WeightedSum, inserted: number): Estimate {
  if (terminals.sum > inserted && inserted > 0) return notComputable('exceeds_production');
  return perMillionOf(terminals, inserted);
}

/** Failed terminals per million units built; several of one unit count several times. */
export function perMillionOf(terminals: WeightedSum, produced: number): Estimate {
  if (produced === 0) return notComputable('no_production');
  const scale = perMillion / produced;
  const { low, high, confidence } = weightedPoissonInterval(terminals);
  return estimate(terminals.sum * scale, { low: low * scale, high: high * scale, confidence });
}

type Basis = NonNullable<z.infer<typeof Change>['basis']>;
const verdicts = { up: 'up', down: 'down', not_beyond_noise: 'within_noise' } as const;

export function toChange(judged: Judged, basis: Basis): Change {
  const none = { ratio: null, interval: null, verdict: null, basis: null };
  if (judged.reason !== null) return { ...none, reason: judged.reason };
  const { ratio, interval, verdict } = judged;
  if (!isFiniteInterval(interval)) return { ...none, reason: 'not_finite' };
  return { ratio, interval, verdict: verdicts[verdict], basis, reason: null };
}
