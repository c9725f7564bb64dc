import { type Estimate, type NotComputable, notComputable } from '../estimate.ts';
import { logGamma } from '../numeric/gamma-distribution.ts';
import { poissonVariate } from '../numeric/poisson-variate.ts';
import { seededRandom } from '../numeric/random.ts';
import { failureRate } from '../rates/failure-rate.ts';
import { type RateRatio, rateRatio } from '../rates/rate-ratio.ts';

/** Failures of one period, in order of time. Without known production give 1 as exposure of equal periods. */
export type SeriesPeriod = { failures: number; exposure: number };

export type ChangePoint = {
  /** place of the first period after the likeliest change */
  at: number;
  /** places of the first period after it that hold the confidence, equal tails */
  interval: { low: number; high: number; confidence: number };
  /** posterior probability of each place 1 … n - 1 as first period after; [0] is place 1 */
  posterior: number[];
  /** 2 × log likelihood ratio of the best change against none */
  statistic: number;
  /** chance of so strong a change somewhere in a series without one */
  p: number;
  rateBefore: Estimate;
  rateAfter: Estimate;
  /** after over before, at the likeliest change; too sure of itself, because the place was chosen by the data */
  ratio: RateRatio;
  reason: null;
};

type Options = {
  seed: number;
  confidence?: number;
  replicates?: number;
  /** gamma prior of both rates, in exposure units; one failure at the overall rate unless given */
  prior?: { shape: number; rate: number };
};

/**
 * When a failure rate changed, once, with an interval, and whether it did.
 *
 * Posterior of the place k, all equally likely before: Γ(a + x₁) / (b + T₁)^(a + x₁) × Γ(a + x₂) / (b + T₂)^(a + x₂). The p-value
 * is a parametric bootstrap: how often series drawn at the overall rate reach as large a best likelihood ratio.
 * Sources: Raftery A.E. and Akman V.E. (1986) Biometrika 73:85-89; Davison A.C. and Hinkley D.V. (1997), chapter 4, for the bootstrap test (from memory).
 *
 * @param series at least 3 periods with exposure above 0
 * @returns `too_few` periods, `no_reports` without a failure, `no_production` where a period has no exposure
 */
export function changePoint(series: readonly SeriesPeriod[], options: Options): ChangePoint | NotComputable {
  const { seed, confidence = 0.95, replicates = 999 } = options;
  if (series.length < 3) return notComputable('too_few');
  if (series.some(({ exposure }) => !(exposure > 0))) return notComputable('no_production');
  const total = series.reduce((sum, { failures }) => sum + failures, 0);
  if (total === 0) return notComputable('no_reports');
  const exposures = cumulated(series.map(({ exposure }) => exposure));
  const counts = cumulated(series.map(({ failures }) => failures));
  const all = exposures.at(-1)!;
  const { shape, rate } = options.prior ?? { shape: 1, rate: all / total };

  const logs = series.slice(1).map((_, i) => {
    const half = (x: number, t: number): number => logGamma(shape + x) - (shape + x) * Math.log(rate + t);
    return half(counts[i]!, exposures[i]!) + half(total - counts[i]!, all - exposures[i]!);
  });
  const posterior = normalised(logs);
  const at = posterior.indexOf(Math.max(...posterior)) + 1;
  const cumulative = cumulated(posterior);
  const tail = (1 - confidence) / 2;
  const place = (probability: number): number => {
    const found = cumulative.findIndex((sum) => sum >= probability);
    return (found < 0 ? cumulative.length - 1 : found) + 1;
  };

  const statistic = largestRatio(counts, exposures);
  const random = seededRandom(seed);
  let asLarge = 1;
  for (let replicate = 0; replicate < replicates; replicate++) {
    const same = series.map(({ exposure }) => poissonVariate((total / all) * exposure, random));
    if (largestRatio(cumulated(same), exposures) >= statistic) asLarge += 1;
  }
  const before = { failures: counts[at - 1]!, exposure: exposures[at - 1]! };
  const after = { failures: total - before.failures, exposure: all - before.exposure };
  return {
    at,
    interval: { low: place(tail), high: place(1 - tail), confidence },
    posterior,
    statistic,
    p: asLarge / (replicates + 1),
    rateBefore: failureRate({ ...before, per: 1, confidence }),
    rateAfter: failureRate({ ...after, per: 1, confidence }),
    ratio: rateRatio(after, before, confidence),
    reason: null,
  };
}

function cumulated(values: readonly number[]): number[] {
  let sum = 0;
  return values.map((value) => {
    sum += value;
    return sum;
  });
}

function normalised(logs: readonly number[]): number[] {
  const largest = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - largest));
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return weights.map((weight) => weight / sum);
}

/** Largest 2 × log likelihood ratio over all places, from cumulated counts and exposures. */
function largestRatio(counts: readonly number[], exposures: readonly number[]): number {
  const total = counts.at(-1)!;
  const all = exposures.at(-1)!;
  const part = (x: number, t: number): number => (x === 0 ? 0 : x * Math.log(x / t));
  const unchanged = part(total, all);
  let best = unchanged;
  for (let i = 0; i < counts.length - 1; i++) {
    best = Math.max(best, part(counts[i]!, exposures[i]!) + part(total - counts[i]!, all - exposures[i]!));
  }
  return 2 * (best - unchanged);
}
