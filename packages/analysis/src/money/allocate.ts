import { type Fraction, floorFraction, fraction, type Rounding, roundFraction, sumFractions } from './fraction.ts';

/** @throws RangeError beyond 2^53, where a number would lose units */
function safeNumber(value: bigint): number {
  const number = Number(value);
  if (!Number.isSafeInteger(number)) throw new RangeError(`${value} minor units are more than can be shown exactly.`);
  return number;
}

/** Whole minor units of an exact amount, rounded once. */
export const roundedMinor = (exact: Fraction, rounding?: Rounding): number =>
  safeNumber(roundFraction(exact, rounding));

/**
 * Whole numbers to show for exact parts and their total, such that the shown parts add up to the shown total.
 *
 * The total is rounded once; every part is rounded down, and the missing units go to the largest remainders, the earlier
 * part first among equals. No part is more than one unit from its exact value.
 * Source: largest remainder (Hamilton) method; Balinski M. and Young H.P. (1982) Fair Representation (from memory).
 */
export function displayParts(parts: readonly Fraction[], rounding?: Rounding): { total: number; parts: number[] } {
  const total = roundFraction(sumFractions(parts), rounding);
  const floors = parts.map(floorFraction);
  const missing = Number(total - floors.reduce((sum, floor) => sum + floor, 0n));
  const remainder = (place: number): Fraction => {
    const { numerator, denominator } = parts[place]!;
    return { numerator: numerator - floors[place]! * denominator, denominator };
  };
  const larger = (a: Fraction, b: Fraction): number => {
    const difference = b.numerator * a.denominator - a.numerator * b.denominator;
    return difference > 0n ? 1 : difference < 0n ? -1 : 0;
  };
  const order = parts.map((_, place) => place).sort((a, b) => larger(remainder(a), remainder(b)) || a - b);
  const raised = new Set(order.slice(0, missing));
  return {
    total: safeNumber(total),
    parts: floors.map((floor, place) => safeNumber(raised.has(place) ? floor + 1n : floor)),
  };
}

/**
 * Splits whole minor units by weights, by largest remainder, so that the parts add up to exactly the total.
 *
 * @param total whole minor units, of either sign
 * @param weights whole numbers >= 0, not all 0 (for example terminals per cause)
 * @throws RangeError when the total or a weight is not such a number
 */
export function allocate(total: number, weights: readonly number[]): number[] {
  const whole = [total, ...weights].every(Number.isSafeInteger);
  if (!whole || !weights.some((weight) => weight > 0) || weights.some((weight) => weight < 0)) {
    throw new RangeError('Allocation needs a whole total and whole weights of 0 or more, not all 0.');
  }
  const sum = weights.reduce((all, weight) => all + BigInt(weight), 0n);
  return displayParts(weights.map((weight) => fraction(BigInt(total) * BigInt(weight), sum))).parts;
}
