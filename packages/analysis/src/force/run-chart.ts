import { logGamma } from '../numeric/gamma-distribution.ts';

export type RunChart = {
  median: number;
  /** values above and below the median; values on it are left out */
  above: number;
  below: number;
  /** stretches on one side of the median */
  runs: number;
  longestRun: number;
  /** chance of so few runs in a random order: small when the level moves or drifts */
  pFewer: number;
  /** chance of so many: small when values alternate, as from two machines in turn */
  pMore: number;
};

const logChoose = (n: number, k: number): number => logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);

/** P(exactly this many runs) of `a` above and `b` below in random order. */
function probabilityOf(runs: number, a: number, b: number): number {
  const half = Math.floor(runs / 2);
  const ways = (i: number, j: number): number =>
    i < 1 || j < 1 || i > a || j > b
      ? 0
      : Math.exp(logChoose(a - 1, i - 1) + logChoose(b - 1, j - 1) - logChoose(a + b, a));
  return runs % 2 === 0 ? 2 * ways(half, half) : ways(half + 1, half) + ways(half, half + 1);
}

/**
 * Runs about the median: whether the values come in random order, before any bound is believed.
 *
 * Exact distribution of the number of runs. Source: Swed F.S. and Eisenhart C. (1943) Ann. Math. Statist. 14:66-87.
 *
 * @param values in order of time
 * @returns null when no value lies on one of the two sides
 */
export function runChart(values: readonly number[]): RunChart | null {
  const sorted = values.toSorted((x, y) => x - y);
  const middle = sorted.length / 2;
  const median = (sorted[Math.ceil(middle) - 1]! + sorted[Math.floor(middle)]!) / 2;
  const sides = values.filter((value) => value !== median).map((value) => value > median);
  const above = sides.filter(Boolean).length;
  const below = sides.length - above;
  if (above === 0 || below === 0) return null;
  let [runs, length, longestRun] = [0, 0, 0];
  sides.forEach((side, i) => {
    length = side === sides[i - 1] ? length + 1 : 1;
    if (length === 1) runs += 1;
    longestRun = Math.max(longestRun, length);
  });
  let pFewer = 0;
  for (let count = 2; count <= runs; count++) pFewer += probabilityOf(count, above, below);
  const pMore = 1 - pFewer + probabilityOf(runs, above, below);
  return { median, above, below, runs, longestRun, pFewer: Math.min(1, pFewer), pMore: Math.min(1, pMore) };
}
