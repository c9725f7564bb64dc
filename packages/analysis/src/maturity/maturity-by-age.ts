import type { DevelopmentStep } from './chain-ladder.ts';

/**
 * Fraction of the final count that is reported by each age: 1 / product of the later factors, so 1 at the oldest age seen.
 *
 * Source: the inverse of the chain ladder's cumulative factor, Mack T. (1993) ASTIN Bulletin 23:213-225.
 *
 * @returns one fraction for each age, 0 to 1; null for ages before a step without a factor
 */
export function maturityByAge(steps: readonly DevelopmentStep[]): (number | null)[] {
  const fractions: (number | null)[] = [1];
  for (const { factor } of steps.toReversed()) {
    const next = fractions[0]!;
    fractions.unshift(factor === null || next === null ? null : next / factor);
  }
  return fractions;
}
