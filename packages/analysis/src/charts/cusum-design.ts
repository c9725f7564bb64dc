import { gaussLegendre } from '../numeric/gauss-legendre.ts';
import { normalUpperTail } from '../numeric/normal-distribution.ts';
import { solveLinear } from '../numeric/solve-linear.ts';
import type { CusumDesign } from './cusum.ts';

const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
const below = (z: number): number => normalUpperTail(-z);

/** Enough for seven digits: the kernel is one standard deviation wide. */
const nodesFor = (limit: number): number => 20 + Math.ceil(3 * limit);

/** Average run length of the upper sum alone, started at 0, for normal values of this mean and standard deviation 1. */
function oneSided(shift: number, { slack, limit }: CusumDesign): number {
  const { nodes, weights } = gaussLegendre(nodesFor(limit), 0, limit);
  const states = [0, ...nodes];
  const matrix = states.map((from, i) =>
    states.map((to, j) => {
      const move = j === 0 ? below(slack - from - shift) : weights[j - 1]! * density(to + slack - from - shift);
      return (i === j ? 1 : 0) - move;
    }),
  );
  return solveLinear(
    matrix,
    states.map(() => [1]),
  )![0]![0]!;
}

/**
 * Points until a two-sided CUSUM signals, on average, for independent normal values shifted by so many standard deviations;
 * `slack` and `limit` in standard deviations. With shift 0 the mean distance of false alarms.
 *
 * L(u) = 1 + L(0) Φ(k - u - shift) + ∫ L(y) φ(y + k - u - shift) dy over 0 to h, by Gauss-Legendre nodes; both sides
 * combine as 1 / (1/L⁺ + 1/L⁻). Sources: Page E.S. (1954); Goel A.L. and Wu S.M. (1971) Technometrics 13:221-230 (from memory);
 * reference `4-cusum-arl`.
 */
export function cusumRunLength(shift: number, design: CusumDesign): number {
  return 1 / (1 / oneSided(shift, design) + 1 / oneSided(-shift, design));
}

/**
 * The design that finds a shift fastest for a given distance of false alarms: slack = shift / 2, limit by bisection.
 *
 * @param shift to be found, in standard deviations, above 0
 * @param falseAlarmEvery points between false alarms on average, above 10
 * @returns slack and limit in standard deviations, and the points until that shift is found on average
 */
export function designCusum(shift: number, falseAlarmEvery: number): CusumDesign & { foundAfter: number } {
  const slack = shift / 2;
  let [low, high] = [0, 20];
  for (let round = 0; round < 26; round++) {
    const middle = (low + high) / 2;
    if (cusumRunLength(0, { slack, limit: middle }) < falseAlarmEvery) low = middle;
    else high = middle;
  }
  const design = { slack, limit: (low + high) / 2 };
  return { ...design, foundAfter: cusumRunLength(shift, design) };
}
