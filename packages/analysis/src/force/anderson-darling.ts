import { normalUpperTail } from '../numeric/normal-distribution.ts';
import { moments } from './moments.ts';

export type NormalityTest = {
  /** A², and A² (1 + 0.75 / n + 2.25 / n²), which p is read from */
  statistic: number;
  adjusted: number;
  /** chance of such a sample from a normal distribution */
  p: number;
};

/** Below this the p-value's formula does not hold. Source: D'Agostino and Stephens (1986). */
export const smallestTested = 8;

/** An outlier beyond what a double holds still counts as one. */
const logTail = (z: number): number => Math.log(Math.max(normalUpperTail(z), Number.MIN_VALUE));

/**
 * Anderson-Darling test of normality, mean and standard deviation estimated.
 *
 * A² = -n - Σ (2i - 1) (ln Φ(z(i)) + ln(1 - Φ(z(n+1-i)))) / n. p by the piecewise formula of D'Agostino and Stephens.
 * Sources: Stephens M.A. (1974) JASA 69:730-737; D'Agostino R.B. and Stephens M.A. (1986), Table 4.9 (from memory); reference
 * `7-anderson-darling`. With few values it finds only gross departures: no finding is not proof of normality.
 *
 * @returns null with fewer than eight values or when all are equal
 */
export function andersonDarling(values: readonly number[]): NormalityTest | null {
  const { n, mean, deviation } = moments(values);
  if (n < smallestTested || !(deviation > 0)) return null;
  const z = values.map((value) => (value - mean) / deviation).sort((a, b) => a - b);
  const sum = z.reduce((total, score, i) => total + (2 * i + 1) * (logTail(-score) + logTail(z[n - 1 - i]!)), 0);
  const statistic = -n - sum / n;
  const adjusted = statistic * (1 + 0.75 / n + 2.25 / n ** 2);
  return { statistic, adjusted, p: pValue(adjusted) };
}

function pValue(a: number): number {
  if (a >= 0.6) return Math.exp(1.2937 - 5.709 * a + 0.0186 * a * a);
  if (a >= 0.34) return Math.exp(0.9177 - 4.279 * a - 1.38 * a * a);
  if (a >= 0.2) return 1 - Math.exp(-8.318 + 42.796 * a - 59.938 * a * a);
  return 1 - Math.exp(-13.436 + 101.14 * a - 223.73 * a * a);
}
