import { type CauseName, causes, type PerCause, perCause } from './causes.ts';
import type { FindingPrior } from './priors.ts';

/** Confirmed cases in which a finding was taken, per cause. */
export interface Seen {
  yes: PerCause;
  no: PerCause;
}
export type SeenByFinding = ReadonlyMap<string, Seen>;

/** Beta(yes, no) of P(yes | cause), as pseudo-counts. */
export interface Beta {
  yes: number;
  no: number;
}
export interface ModelFinding {
  code: string;
  group: string;
  minutes: number;
  beta: Record<CauseName, Beta>;
}

export interface SuggestionModel {
  findings: ReadonlyMap<string, ModelFinding>;
  base: PerCause;
  /** How many cases the base rates rest on, pseudo-counts included. */
  baseCases: number;
  /** Correlation of findings of one group within a cause, 0 to 1, by group. */
  dependence: ReadonlyMap<string, number>;
  /** Divides the weight of evidence so that past suggestions were neither too sure nor too shy; 1 = as computed. */
  temperature: number;
  /** Confirmed cases it has learned from: in the group, and at the plant it is asked for. */
  cases: { group: number; plant: number };
}

/** How many cases the engineers' prior is worth for each P(yes | cause). */
export const priorStrength = 12;
/** How many cases of the plant weigh as much as what all other plants saw. */
export const poolingStrength = 25;

const none: Seen = { yes: perCause(() => 0), no: perCause(() => 0) };

/**
 * P(yes | cause) as a Beta distribution with partial pooling: the engineers' prior is updated by the other plants' cases, and the
 * result serves, with at most `poolingStrength` pseudo-cases, as the prior of the plant's own cases.
 * Source: Gelman A. et al., Bayesian Data Analysis, sections 2.4 and 5.3 (conjugate Beta, hierarchical pooling; from memory).
 */
export function learnFinding(prior: FindingPrior, others: Seen = none, plant: Seen = none): ModelFinding {
  const beta = (cause: CauseName): Beta => {
    const yes = priorStrength * prior.yes[cause] + others.yes[cause];
    const all = priorStrength + others.yes[cause] + others.no[cause];
    const strength = Math.min(all, Math.max(poolingStrength, priorStrength));
    const mean = yes / all;
    return { yes: strength * mean + plant.yes[cause], no: strength * (1 - mean) + plant.no[cause] };
  };
  return {
    code: prior.code,
    group: prior.group,
    minutes: prior.minutes,
    beta: Object.fromEntries(causes.map((cause) => [cause, beta(cause)])) as Record<CauseName, Beta>,
  };
}

/** No cause is ever less probable than this before evidence, so that a rare one stays reachable. */
export const baseFloor = 0.01;
const groupStrength = 18;
const plantStrength = 30;

export interface CauseCounts {
  group: PerCause;
  plant: PerCause;
  part: PerCause;
}

/**
 * Probability of each cause before evidence: the group's confirmed cases over a flat start, then the plant's, then the part's,
 * each serving as a prior of limited strength for the next, mixed with a floor. Dirichlet-multinomial; same source as above.
 *
 * @returns the rates, and how many cases they rest on (pseudo-counts included), which says how sure they are
 */
export function baseRates({ group, plant, part }: CauseCounts): { base: PerCause; baseCases: number } {
  let rates = perCause(() => 1 / causes.length);
  let strength = groupStrength;
  for (const [seen, most] of [
    [group, groupStrength],
    [plant, plantStrength],
    [part, plantStrength],
  ] as const) {
    const before = rates;
    const weight = Math.min(strength, most);
    const cases = causes.reduce((sum, cause) => sum + seen[cause], 0);
    rates = perCause((cause) => (weight * before[cause] + seen[cause]) / (weight + cases));
    strength = weight + cases;
  }
  return { base: perCause((cause) => baseFloor + (1 - baseFloor * causes.length) * rates[cause]), baseCases: strength };
}
