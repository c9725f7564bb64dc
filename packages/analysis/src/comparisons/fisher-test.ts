import { defaultConfidence, type Interval } from '../estimate.ts';
import { type DiscreteDistribution, type ExactTest, exactTest } from '../numeric/exact-test.ts';
import { logGamma } from '../numeric/gamma-distribution.ts';
import { requireConfidence, requireCount } from '../numeric/require-count.ts';

const logChoose = (n: number, k: number): number => logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);

/** Marked items in a sample of `drawn` from `marked` + `unmarked` items. */
function hypergeometric(marked: number, unmarked: number, drawn: number): DiscreteDistribution {
  const all = marked + unmarked;
  return {
    low: Math.max(0, drawn - unmarked),
    high: Math.min(drawn, marked),
    mode: Math.floor(((drawn + 1) * (marked + 1)) / (all + 2)),
    logMass: (x) => logChoose(marked, x) + logChoose(unmarked, drawn - x) - logChoose(all, drawn),
    ratio: (x) => ((marked - x) * (drawn - x)) / ((x + 1) * (unmarked - drawn + x + 1)),
  };
}

/** Weight of all values beyond `start` on one side, relative to the weight of `start`, at an odds ratio. */
function weightBeyond({ low, high, ratio }: DiscreteDistribution, start: number, step: 1 | -1, odds: number): number {
  let sum = 0;
  let weight = 1;
  for (let x = start; x + step >= low && x + step <= high; x += step) {
    const factor = step === 1 ? ratio(x) * odds : 1 / (ratio(x - 1) * odds);
    weight *= factor;
    sum += weight;
    if (sum === Number.POSITIVE_INFINITY || (factor < 1 && weight < sum * 1e-17)) break;
  }
  return sum;
}

/** Odds ratio at which P(X on the `step` side of observed, itself included) equals `tail`; bisection on its logarithm. */
function limit(distribution: DiscreteDistribution, observed: number, step: 1 | -1, tail: number): number {
  let low = -60;
  let high = 60;
  for (let round = 0; round < 60; round++) {
    const middle = (low + high) / 2;
    const toward = weightBeyond(distribution, observed, step, Math.exp(middle));
    const away = weightBeyond(distribution, observed, step === 1 ? -1 : 1, Math.exp(middle));
    const probability = toward === Number.POSITIVE_INFINITY ? 1 : (1 + toward) / (1 + toward + away);
    if (probability > tail === (step === 1)) high = middle;
    else low = middle;
  }
  return Math.exp((low + high) / 2);
}

/**
 * Fisher's exact test of a 2 × 2 table with the conditional interval of its odds ratio.
 *
 * With all margins fixed the first cell is hypergeometric; the interval solves the noncentral hypergeometric tails for
 * alpha/2 each; the two-sided p-value is the minimum-likelihood one. Sources: Fisher R.A. (1935) The Design of Experiments;
 * R `fisher.test` (reference `2-fisher-tea`).
 *
 * @param table [[a, b], [c, d]]; the odds ratio is (a / b) / (c / d)
 * @returns the sample odds ratio (null where b or c is 0), its interval, and p-values for a lower or higher first cell
 */
export function fisherTest(
  table: readonly [readonly [number, number], readonly [number, number]],
  confidence = defaultConfidence,
): { oddsRatio: number | null; interval: Interval; p: ExactTest } {
  const [[a, b], [c, d]] = table;
  for (const cell of [a, b, c, d]) requireCount('cell', cell);
  requireConfidence(confidence);
  const distribution = hypergeometric(a + b, c + d, a + c);
  const tail = (1 - confidence) / 2;
  return {
    oddsRatio: b * c === 0 ? null : (a * d) / (b * c),
    interval: {
      low: a === distribution.low ? 0 : limit(distribution, a, 1, tail),
      high: a === distribution.high ? null : limit(distribution, a, -1, tail),
      confidence,
    },
    p: exactTest(distribution, a),
  };
}
