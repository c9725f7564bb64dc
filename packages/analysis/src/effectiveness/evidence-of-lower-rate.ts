import { betaCdf } from '../numeric/beta-distribution.ts';
import { logGamma } from '../numeric/gamma-distribution.ts';

/** Failures counted over an exposure above 0. */
export type Counted = { failures: number; exposure: number };

/** Evidence is cut here, so that it stays a number on the wire. */
const strongest = 1e300;

/**
 * Evidence that the first rate lies below the second, which stays valid however often it is looked at: an e-value.
 *
 * Half of it is the likelihood ratio of the conditional binomial at the expected ratio of rates ψ₁ against equal rates, half
 * its average over all ratios ψ from 0 to 1 (a truncated beta integral, so no numerical integration):
 * LR(ψ) = ψ^a ((S + T) / (S + ψT))^(a + b), a failures over T in the first, b over S in the second.
 * By Ville's inequality equal or higher first rates ever reach 1 / alpha with probability alpha at most. This is a martingale
 * while exposure grows after a first period that ended with a failure; for a first period of fixed length it is checked by
 * simulation of weekly looks.
 * Sources (from memory): Robbins H. (1970) Ann. Math. Statist. 41:1397-1409, mixtures; Ville J. (1939); Pérez-Ortiz M.F.,
 * Lardy T., de Heide R. and Grünwald P. (2024) Annals of Statistics 52, the unknown common rate removed by invariance.
 *
 * @param expectedRatio first rate over second where the first is lower, 0 to 1; stated before the data were seen
 * @returns 0 to 1e300; 1 without evidence either way. Where the second has fewer than two failures the average has no
 *   limit and counts as 0, which errs towards too little evidence
 */
export function evidenceOfLowerRate(first: Counted, second: Counted, expectedRatio: number): number {
  if (second.exposure === 0) return second.failures > 0 ? strongest : 1;
  const all = first.failures + second.failures;
  const share = first.exposure / (first.exposure + second.exposure);
  const logPoint =
    (first.failures === 0 ? 0 : first.failures * Math.log(expectedRatio)) +
    all * Math.log((first.exposure + second.exposure) / (second.exposure + expectedRatio * first.exposure));
  return Math.min(strongest, (Math.exp(logPoint) + Math.exp(logAverage(first, second, share))) / 2);
}

function logAverage(first: Counted, second: Counted, share: number): number {
  if (second.failures < 2) return Number.NEGATIVE_INFINITY;
  const a = first.failures + 1;
  const b = second.failures - 1;
  return (
    a * Math.log(second.exposure / first.exposure) -
    (first.failures + second.failures) * Math.log1p(-share) +
    logGamma(a) +
    logGamma(b) -
    logGamma(a + b) +
    Math.log(betaCdf(share, a, b))
  );
}
