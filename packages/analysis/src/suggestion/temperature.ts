import { type CauseName, type PerCause, perCause } from './causes.ts';
import { softmax } from './suggest.ts';

/** A case judged before it was learned from: log evidence per cause at temperature 1, base rates of that moment, and the truth. */
export interface Judged {
  evidence: PerCause;
  base: PerCause;
  cause: CauseName;
}

const lowest = 0.5;
const highest = 5;
/** Standard deviation of log temperature before any case: few cases move it little. */
const priorDeviation = 0.3;

function loss(judged: readonly Judged[], temperature: number): number {
  const penalty = Math.log(temperature) ** 2 / (2 * priorDeviation ** 2);
  return judged.reduce(
    (sum, { evidence, base, cause }) =>
      sum -
      Math.log(Math.max(1e-12, softmax(perCause((it) => Math.log(base[it]) + evidence[it] / temperature))[cause])),
    penalty,
  );
}

/**
 * The temperature by which evidence must be divided so that past probabilities come true as often as they said: minimises the log loss of
 * cases judged before they were learned from, with a normal prior on its logarithm. Golden-section search.
 * Source: temperature scaling, Guo C. et al. (2017) On calibration of modern neural networks, ICML (from memory).
 */
export function fitTemperature(judged: readonly Judged[]): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let low = Math.log(lowest);
  let high = Math.log(highest);
  while (high - low > 1e-3) {
    const left = high - golden * (high - low);
    const right = low + golden * (high - low);
    if (loss(judged, Math.exp(left)) < loss(judged, Math.exp(right))) high = right;
    else low = left;
  }
  return Math.exp((low + high) / 2);
}

/** Takes base rates and temperature out of given probabilities: the log evidence, up to a constant. */
export const evidenceOf = (probabilities: PerCause, base: PerCause, temperature: number): PerCause =>
  perCause((cause) => temperature * (Math.log(Math.max(1e-12, probabilities[cause])) - Math.log(base[cause])));
