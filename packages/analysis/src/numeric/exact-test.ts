/** A distribution on the whole numbers `low` to `high` whose mass rises to `mode` and falls after it. */
export type DiscreteDistribution = {
  low: number;
  high: number;
  mode: number;
  logMass: (value: number) => number;
  /** P(value + 1) / P(value) */
  ratio: (value: number) => number;
};

/** P(X <= observed), P(X >= observed), and the two-sided p-value. */
export type ExactTest = { less: number; greater: number; twoSided: number };

/** Outcomes count as equally likely when their masses agree to this relative amount, as R's exact tests do. */
const tieTolerance = 1e-7;

/** Sum of the masses from `start` away from the mode, by recursion, so that tails far below 1e-16 keep their digits. */
function tailFrom(distribution: DiscreteDistribution, start: number, step: 1 | -1): number {
  const { low, high, logMass, ratio } = distribution;
  if (start < low || start > high) return 0;
  let mass = Math.exp(logMass(start));
  let sum = mass;
  for (let value = start; value + step >= low && value + step <= high; value += step) {
    mass = step === 1 ? mass * ratio(value) : mass / ratio(value - 1);
    sum += mass;
    if (mass < sum * 1e-17) break;
  }
  return sum;
}

/** First value beyond the mode, on the side of `step`, that is at most as likely as `logLimit` says. */
function firstUnlikely(distribution: DiscreteDistribution, step: 1 | -1, logLimit: number): number {
  const { low, high, mode, logMass } = distribution;
  let likely = -1;
  let unlikely = (step === 1 ? high : low) * step - mode * step + 1;
  for (let jump = 1; mode + jump * step >= low && mode + jump * step <= high && jump < unlikely; jump *= 2) {
    if (logMass(mode + jump * step) <= logLimit) unlikely = jump;
  }
  while (unlikely - likely > 1) {
    const middle = Math.floor((likely + unlikely) / 2);
    if (logMass(mode + middle * step) <= logLimit) unlikely = middle;
    else likely = middle;
  }
  return mode + unlikely * step;
}

/**
 * Exact test of one observed value. The two-sided p-value is the probability of all outcomes that are at most as likely
 * as the observed one (minimum likelihood), the definition of R's `poisson.test`, `binom.test` and `fisher.test`;
 * it is not twice the smaller tail.
 */
export function exactTest(distribution: DiscreteDistribution, observed: number): ExactTest {
  const { mode, logMass } = distribution;
  const mass = Math.exp(logMass(observed));
  if (observed === mode) {
    const less = tailFrom(distribution, observed, -1);
    return { less, greater: 1 - less + mass, twoSided: 1 };
  }
  const away = observed < mode ? -1 : 1;
  const near = tailFrom(distribution, observed, away);
  const opposite = away === 1 ? -1 : 1;
  const far = tailFrom(distribution, firstUnlikely(distribution, opposite, logMass(observed) + tieTolerance), opposite);
  const rest = 1 - near + mass;
  return {
    less: away === -1 ? near : rest,
    greater: away === 1 ? near : rest,
    twoSided: Math.min(1, near + far),
  };
}
