import { noncentralTQuantile } from '../numeric/noncentral-t.ts';
import { normalQuantile } from '../numeric/normal-distribution.ts';

/** `coverage`: fraction of all terminals; `confidence`: of the statement about them. 0.95 each is the customary 95/95. */
export type Coverage = { coverage: number; confidence: number };

export const customaryCoverage: Coverage = { coverage: 0.95, confidence: 0.95 };

/**
 * Factor of the one-sided normal tolerance bound: mean - k s lies, with the confidence, below the coverage of all values.
 *
 * k = t'(confidence; n - 1, z(coverage) sqrt(n)) / sqrt(n), t' the noncentral t quantile.
 * Sources: ISO 16269-6; Natrella M.G. (1963) NBS Handbook 91, Table A-7; references `7-k1-table`, `7-nist-tolerance`.
 *
 * @param n sample size, at least 2
 */
export function toleranceFactor(n: number, { coverage, confidence }: Coverage = customaryCoverage): number {
  if (!Number.isSafeInteger(n) || n < 2) throw new RangeError(`n must be a whole number of 2 or more, not ${n}.`);
  return noncentralTQuantile(confidence, n - 1, normalQuantile(coverage) * Math.sqrt(n)) / Math.sqrt(n);
}
