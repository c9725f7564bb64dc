import { defaultConfidence, type Estimate, estimate, notComputable } from '../estimate.ts';
import { type Random, seededRandom } from '../numeric/random.ts';
import { requireConfidence } from '../numeric/require-count.ts';
import { sampleQuantile } from '../numeric/sample-quantile.ts';
import { gammaVariate, normalVariate } from '../numeric/variates.ts';

/** Sums over the reports found at a stage of ln(booked cost per terminal); reports without a cost above 0 are left out. */
export type LogCosts = { stage: number; count: number; sumLog: number; sumLogSquares: number };

export type EscalationFactor = { stage: number; count: number; factor: Estimate };

type Options = { baseStage: number; seed: number; draws?: number; confidence?: number };

/** A stage's mean log cost, and draws of how far it may be off. */
type StageMean = { stage: number; count: number; meanLog: number; draw: (random: Random) => number };

const fewestReports = 2;

/**
 * Measured escalation: how many times dearer a terminal is when found at a stage than at the base stage.
 *
 * Ratio of geometric means, exp(mean ln cost(stage) - mean ln cost(base)), with the percentile interval of a seeded
 * parametric bootstrap: each mean is drawn from mean + s / sqrt(n) × t(n - 1), which the sums determine.
 * Source: Efron B. and Tibshirani R. (1993) An Introduction to the Bootstrap, chapters 6 and 13 (from memory); the interval
 * of one difference agrees with Welch's (1947). Compare like with like: filter to one part or family where the mix differs.
 *
 * @param stages sums per stage, booked costs of one currency; the base stage among them
 * @returns one factor per stage, 1 for the base; `no_cost` when stage or base has no cost, `too_few` with one report only
 */
export function escalationFactors(stages: readonly LogCosts[], options: Options): EscalationFactor[] {
  const means = stages.map(({ stage, count, sumLog, sumLogSquares }): StageMean => {
    const meanLog = sumLog / count;
    const freedom = count - 1;
    const variance = Math.max(0, (sumLogSquares - sumLog * meanLog) / freedom);
    const error = Math.sqrt(variance / count);
    return {
      stage,
      count,
      meanLog,
      draw: (random) => (error * normalVariate(random)) / Math.sqrt(gammaVariate(freedom / 2, random) / (freedom / 2)),
    };
  });
  return factors(means, options);
}

/**
 * The same factors from every single cost, by resampling the reports of each stage with replacement.
 *
 * @param stages costs per terminal, all above 0, in any one unit
 */
export function escalationFactorsOfSamples(
  stages: readonly { stage: number; costs: readonly number[] }[],
  options: Options,
): EscalationFactor[] {
  const means = stages.map(({ stage, costs }): StageMean => {
    const logs = Float64Array.from(costs, Math.log);
    const meanLog = logs.reduce((sum, log) => sum + log, 0) / logs.length;
    const draw = (random: Random): number => {
      let sum = 0;
      for (let i = 0; i < logs.length; i++) sum += logs[Math.floor(random() * logs.length)]!;
      return sum / logs.length - meanLog;
    };
    return { stage, count: logs.length, meanLog, draw };
  });
  return factors(means, options);
}

function factors(stages: readonly StageMean[], options: Options): EscalationFactor[] {
  const { baseStage, seed, draws = 4000, confidence = defaultConfidence } = options;
  requireConfidence(confidence);
  const random = seededRandom(seed);
  const base = stages.find(({ stage }) => stage === baseStage);
  const drawsOf = (mean: StageMean): Float64Array => Float64Array.from({ length: draws }, () => mean.draw(random));
  const baseDraws = base && base.count >= fewestReports ? drawsOf(base) : null;

  return stages.map((mean): EscalationFactor => {
    const { stage, count } = mean;
    if (!base || base.count === 0 || count === 0) return { stage, count, factor: notComputable('no_cost') };
    if (!baseDraws || count < fewestReports) return { stage, count, factor: notComputable('too_few') };
    if (stage === baseStage) return { stage, count, factor: estimate(1, { low: 1, high: 1, confidence }) };
    const difference = mean.meanLog - base.meanLog;
    const sorted = drawsOf(mean)
      .map((draw, i) => difference + draw - baseDraws[i]!)
      .sort();
    const tail = (1 - confidence) / 2;
    const low = Math.exp(sampleQuantile(sorted, tail));
    const high = Math.exp(sampleQuantile(sorted, 1 - tail));
    return { stage, count, factor: estimate(Math.exp(difference), { low, high, confidence }) };
  });
}
