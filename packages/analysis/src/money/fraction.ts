/** An exact rational number; the denominator is above 0 and the two have no common factor. */
export type Fraction = { numerator: bigint; denominator: bigint };

/** `half_even` rounds a tie to the even neighbour (IEEE 754; ISO 80000-1 rule A), `half_up` away from zero (rule B). */
export type Rounding = 'half_even' | 'half_up';

const absolute = (value: bigint): bigint => (value < 0n ? -value : value);

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  let [larger, smaller] = [absolute(a), absolute(b)];
  while (smaller > 0n) [larger, smaller] = [smaller, larger % smaller];
  return larger;
}

/** @throws RangeError when the denominator is 0 */
export function fraction(numerator: bigint, denominator = 1n): Fraction {
  if (denominator === 0n) throw new RangeError('A fraction needs a denominator other than 0.');
  const divisor = greatestCommonDivisor(numerator, denominator) * (denominator < 0n ? -1n : 1n);
  return { numerator: numerator / divisor, denominator: denominator / divisor };
}

/** The exact value of a decimal such as "1.0825". @throws RangeError on anything but digits, one sign and one point */
export function fractionOfDecimal(text: string): Fraction {
  const match = /^(-?)(\d+)(?:\.(\d+))?$/.exec(text);
  if (!match) throw new RangeError(`"${text}" is not a plain decimal number.`);
  const [, sign, whole, decimals = ''] = match;
  return fraction(BigInt(`${sign}${whole}${decimals}`), 10n ** BigInt(decimals.length));
}

export const addFractions = (a: Fraction, b: Fraction): Fraction =>
  fraction(a.numerator * b.denominator + b.numerator * a.denominator, a.denominator * b.denominator);

export const sumFractions = (parts: readonly Fraction[]): Fraction => parts.reduce(addFractions, fraction(0n));

export const multiplyFractions = (a: Fraction, b: Fraction): Fraction =>
  fraction(a.numerator * b.numerator, a.denominator * b.denominator);

/** The largest whole number that is not above the value. */
export function floorFraction({ numerator, denominator }: Fraction): bigint {
  const quotient = numerator / denominator;
  return numerator < 0n && quotient * denominator !== numerator ? quotient - 1n : quotient;
}

/** The nearest whole number; ties by the rule named. */
export function roundFraction(value: Fraction, rounding: Rounding = 'half_even'): bigint {
  const below = floorFraction(value);
  const twiceRest = 2n * (value.numerator - below * value.denominator);
  if (twiceRest !== value.denominator) return twiceRest > value.denominator ? below + 1n : below;
  const goUp = rounding === 'half_even' ? below % 2n !== 0n : below >= 0n;
  return goUp ? below + 1n : below;
}
