import { gammaQuantile, logGamma } from './gamma-distribution.ts';
import { gaussLegendre } from './gauss-legendre.ts';
import { normalQuantile, normalUpperTail } from './normal-distribution.ts';

const nodesPerPanel = 20;
/** With few degrees of freedom the quantile is large, and Φ(t s - shift) rises within a small part of the range of s. */
const panelsFor = (freedom: number): number => (freedom < 3 ? 60 : 10);

/** Nodes s and masses of S = sqrt(chi² / freedom), over all but 2e-14 of its probability. */
function deviationNodes(freedom: number): { s: number; mass: number }[] {
  const half = freedom / 2;
  const at = (probability: number): number => Math.sqrt(gammaQuantile(probability, half) / half);
  const [from, to] = [freedom < 3 ? 0 : at(1e-14), at(1 - 1e-14)];
  const logConstant = Math.LN2 + half * Math.log(half) - logGamma(half);
  const panels = panelsFor(freedom);
  const width = (to - from) / panels;
  return Array.from({ length: panels }, (_, panel) => {
    const { nodes, weights } = gaussLegendre(nodesPerPanel, from + panel * width, from + (panel + 1) * width);
    return Array.from(nodes, (s, i) => ({
      s,
      mass: weights[i]! * Math.exp(logConstant + (freedom - 1) * Math.log(s) - half * s * s),
    }));
  }).flat();
}

/** P(T <= t) of (Z + shift) / S, T noncentral t: ∫ Φ(t s - shift) dF(s). */
const below = (t: number, shift: number, nodes: readonly { s: number; mass: number }[]): number =>
  nodes.reduce((sum, { s, mass }) => sum + mass * normalUpperTail(shift - t * s), 0);

/** Probabilities are compared as normal scores, on which they are nearly straight lines. */
const score = (probability: number): number => normalQuantile(Math.min(1 - 1e-15, Math.max(1e-15, probability)));

/**
 * Where a falling or rising function passes a level: outwards from a first guess until it is enclosed, then by false position
 * with the Illinois rule. Source: Dowell M. and Jarratt P. (1971) BIT 11:168-174 (from memory).
 */
function solve(f: (x: number) => number, level: number, guess: number, rising: boolean): number {
  const target = score(level);
  const above = (x: number): number => (rising ? 1 : -1) * (score(f(x)) - target);
  let [low, high] = [guess - 1, guess + 1];
  let [atLow, atHigh] = [above(low), above(high)];
  for (let step = 2; atLow > 0; step *= 2) [high, atHigh, low, atLow] = [low, atLow, low - step, above(low - step)];
  for (let step = 2; atHigh < 0; step *= 2)
    [low, atLow, high, atHigh] = [high, atHigh, high + step, above(high + step)];
  let kept: 'low' | 'high' | null = null;
  for (let round = 0; round < 100 && high - low > 1e-12 * Math.max(1, Math.abs(high)); round++) {
    const x = (low * atHigh - high * atLow) / (atHigh - atLow);
    const value = above(x);
    if (Math.abs(value) < 1e-13) return x;
    if (value < 0) {
      [low, atLow] = [x, value];
      if (kept === 'high') atHigh /= 2;
      kept = 'high';
    } else {
      [high, atHigh] = [x, value];
      if (kept === 'low') atLow /= 2;
      kept = 'low';
    }
  }
  return (low + high) / 2;
}

/**
 * Quantile of the noncentral t distribution with a shift δ, by integration over the standard deviation.
 * Source: Owen D.B. (1968) Technometrics 10:445-478 (from memory); references `7-k1-table`, `7-nist-tolerance`.
 */
export function noncentralTQuantile(probability: number, freedom: number, shift: number): number {
  const nodes = deviationNodes(freedom);
  return solve((t) => below(t, shift, nodes), probability, shift, true);
}

/** The shift δ at which P(T <= t) has this value: confidence limits of what t estimates. */
export function noncentralTShift(t: number, probability: number, freedom: number): number {
  const nodes = deviationNodes(freedom);
  return solve((shift) => below(t, shift, nodes), probability, t, false);
}
