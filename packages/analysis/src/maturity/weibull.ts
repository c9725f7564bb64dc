import { defaultConfidence, type Estimate, estimate, type NotComputable, notComputable } from '../estimate.ts';
import { logGamma } from '../numeric/gamma-distribution.ts';
import { normalQuantile } from '../numeric/normal-distribution.ts';
import { requireConfidence } from '../numeric/require-count.ts';
import type { Lifetime } from '../survival/kaplan-meier.ts';

export type WeibullLife = {
  /** below 1 the failure rate falls with age, above 1 it rises */
  shape: Estimate;
  /** time by which 63.2 % have failed, in the unit of the times */
  characteristicLife: Estimate;
  logLikelihood: number;
  /** of μ = ln characteristic life and ln σ = -ln shape: variances and covariance, from the observed information */
  covariance: { mu: number; logSigma: number; both: number };
  confidence: number;
  reason: null;
};

/**
 * Weibull life by maximum likelihood, right censored: S(t) = exp(-(t / η)^β).
 *
 * β solves Σ t^β ln t / Σ t^β - 1/β = mean of ln t over the failures, by bisection; η^β = Σ t^β / failures. Intervals are normal on
 * ln β and ln η with the observed information. Sources: Cohen A.C. (1965) Technometrics 7:579-588; Meeker W.Q. and Escobar L.A.
 * (1998), chapter 8 (from memory); references `6-weibull-*`. One failure mode at a time: a mixture of causes has no one shape.
 *
 * @param lifetimes times above 0 in one unit
 * @returns `too_few` with fewer than two failures, `not_finite` when all failed at one time and none lived on
 */
export function weibullLife(
  lifetimes: readonly Lifetime[],
  confidence = defaultConfidence,
): WeibullLife | NotComputable {
  requireConfidence(confidence);
  if (lifetimes.some(({ time }) => !(time > 0))) throw new RangeError('Times in service must be above 0.');
  const failed = lifetimes.filter((one) => one.failed);
  const failures = failed.reduce((sum, { units = 1 }) => sum + units, 0);
  if (failures < 2) return notComputable('too_few');
  const longest = Math.max(...lifetimes.map(({ time }) => time));
  if (failed.every(({ time }) => time === longest)) return notComputable('not_finite');

  const logs = lifetimes.map(({ time, failed: hasFailed, units = 1 }) => ({
    log: Math.log(time / longest),
    units,
    failures: hasFailed ? units : 0,
  }));
  const meanLog = logs.reduce((sum, { log, failures: count }) => sum + count * log, 0) / failures;
  const slope = (shape: number): number => {
    let [powers, weighted] = [0, 0];
    for (const { log, units } of logs) {
      const power = units * Math.exp(shape * log);
      powers += power;
      weighted += power * log;
    }
    return weighted / powers - 1 / shape - meanLog;
  };
  const shape = root(slope);
  const powers = logs.reduce((sum, { log, units }) => sum + units * Math.exp(shape * log), 0);
  const mu = Math.log(longest) + Math.log(powers / failures) / shape;
  const sigma = 1 / shape;

  let [logLikelihood, aa, ab, bb] = [0, 0, 0, 0];
  for (const { log, units, failures: count } of logs) {
    const logTime = log + Math.log(longest);
    const z = (logTime - mu) / sigma;
    const hazard = units * Math.exp(z);
    logLikelihood += count * (z - Math.log(sigma) - logTime) - hazard;
    aa += hazard / sigma ** 2;
    ab += (hazard * (z + 1) - count) / sigma;
    bb += hazard * z * (z + 1) - count * z;
  }
  const determinant = aa * bb - ab * ab;
  const covariance = { mu: bb / determinant, logSigma: aa / determinant, both: -ab / determinant };
  const around = (log: number, variance: number): Estimate => {
    const half = -normalQuantile((1 - confidence) / 2) * Math.sqrt(variance);
    return estimate(Math.exp(log), { low: Math.exp(log - half), high: Math.exp(log + half), confidence });
  };
  return {
    shape: around(Math.log(shape), covariance.logSigma),
    characteristicLife: around(mu, covariance.mu),
    logLikelihood,
    covariance,
    confidence,
    reason: null,
  };
}

/** Root of a rising function on the positive numbers, by bisection on the logarithm. */
function root(rising: (x: number) => number): number {
  let [low, high] = [-7, 7];
  for (let round = 0; round < 100; round++) {
    const middle = (low + high) / 2;
    if (rising(Math.exp(middle)) < 0) low = middle;
    else high = middle;
  }
  return Math.exp((low + high) / 2);
}

/** Fraction that fails up to a time, 1 - exp(-(t / η)^β), with its interval on the scale ln(-ln S) (delta method). */
export function weibullFractionFailed(life: WeibullLife, time: number): Estimate {
  if (!(time > 0)) throw new RangeError(`time must be above 0, not ${time}.`);
  const shape = life.shape.value!;
  const w = (Math.log(time) - Math.log(life.characteristicLife.value!)) * shape;
  const { mu, logSigma, both } = life.covariance;
  const variance = shape ** 2 * mu + w ** 2 * logSigma + 2 * shape * w * both;
  const half = -normalQuantile((1 - life.confidence) / 2) * Math.sqrt(variance);
  const fraction = (score: number): number => -Math.expm1(-Math.exp(score));
  return estimate(fraction(w), { low: fraction(w - half), high: fraction(w + half), confidence: life.confidence });
}

/** Mean and standard deviation of the life: η Γ(1 + 1/β); η sqrt(Γ(1 + 2/β) - Γ(1 + 1/β)²). */
export function weibullMoments(shape: number, characteristicLife: number): { mean: number; deviation: number } {
  const gamma = (x: number): number => Math.exp(logGamma(x));
  const first = gamma(1 + 1 / shape);
  return {
    mean: characteristicLife * first,
    deviation: characteristicLife * Math.sqrt(gamma(1 + 2 / shape) - first ** 2),
  };
}
