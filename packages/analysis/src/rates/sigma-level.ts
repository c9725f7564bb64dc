import { normalQuantile, normalUpperTail } from '../numeric/normal-distribution.ts';

/** Which of the two circulating conversion tables: both assume a long-term shift of 1.5 sigma. */
export type SigmaTable = 'one_tail_shift_1_5' | 'two_tails_shift_1_5';

const shift = 1.5;

/**
 * DPMO of a sigma level. One tail: 1e6 × Φ(-(s - 1.5)); two tails add Φ(-(s + 1.5)).
 * Source: the customary six-sigma table (reference `1-dpmo-sigma`); one sigma is 691 462 by one tail, 697 672 by two.
 */
export function dpmoOfSigma(sigma: number, table: SigmaTable = 'one_tail_shift_1_5'): number {
  const near = normalUpperTail(sigma - shift);
  return 1e6 * (table === 'one_tail_shift_1_5' ? near : near + normalUpperTail(sigma + shift));
}

/**
 * Sigma level of a DPMO by the one-tail table: s = Φ⁻¹(1 - DPMO/1e6) + 1.5.
 *
 * @returns the level and the table's name, or `not_finite` at 0 and 1 000 000 DPMO, where no level exists
 */
export function sigmaLevel(
  dpmo: number,
): { value: number; table: SigmaTable; reason: null } | { value: null; table: SigmaTable; reason: 'not_finite' } {
  const table = 'one_tail_shift_1_5';
  if (!(dpmo > 0 && dpmo < 1e6)) return { value: null, table, reason: 'not_finite' };
  return { value: shift - normalQuantile(dpmo / 1e6), table, reason: null };
}
