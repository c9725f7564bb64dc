import { minorUnitDigits } from './currencies.ts';
import { type DatedRate, rateAsOf } from './exchange-rates.ts';
import { addFractions, type Fraction, fraction, fractionOfDecimal, multiplyFractions } from './fraction.ts';

/** Whole minor units of a currency, and the day whose exchange rate counts. */
export type DatedAmount = { minor: number; currency: string; day: string };

export type Converted = {
  /** exact minor units of the target currency: add them up first, round once at the end */
  exact: Fraction;
  /** the rates used, each once, to be shown with their dates */
  rates: DatedRate[];
  /** amounts that no rate covers (reason `no_rate`); not in `exact` */
  missing: DatedAmount[];
};

const inverse = ({ numerator, denominator }: Fraction): Fraction => fraction(denominator, numerator);

/**
 * Minor units of `to` for one minor unit of `from`, exactly: rate × 10^(digits of `to` - digits of `from`).
 *
 * @param rate decimal, units of `to` for one unit of `from`, above 0
 * @throws RangeError when a code or the rate is malformed
 */
export function minorUnitFactor(from: string, to: string, rate: string): Fraction {
  const factor = fractionOfDecimal(rate);
  if (factor.numerator <= 0n) throw new RangeError(`An exchange rate must be above 0, not ${rate}.`);
  const shift = minorUnitDigits(to) - minorUnitDigits(from);
  const power = fraction(10n ** BigInt(Math.abs(shift)));
  return multiplyFractions(factor, shift >= 0 ? power : inverse(power));
}

/**
 * The factor of the rate in force on a day, or of the opposite rate turned round, and the rate it comes from.
 *
 * @returns null when neither has a rate by that day; `rate: null` where both currencies are the same
 */
export function factorAsOf(
  rates: readonly DatedRate[],
  from: string,
  to: string,
  day: string,
): { factor: Fraction; rate: DatedRate | null } | null {
  if (from === to) return { factor: fraction(1n), rate: null };
  const straight = rateAsOf(rates, from, to, day);
  if (straight) return { factor: minorUnitFactor(from, to, straight.rate), rate: straight };
  const opposite = rateAsOf(rates, to, from, day);
  return opposite && { factor: inverse(minorUnitFactor(to, from, opposite.rate)), rate: opposite };
}

/** An amount of whole minor units of `from` in minor units of `to`, exact and unrounded; see `minorUnitFactor`. */
export function convertExactly(minor: number, from: string, to: string, rate: string): Fraction {
  return multiplyFractions(wholeMinor(minor), minorUnitFactor(from, to, rate));
}

/** Adds amounts of any currencies up in one, each at the rate of its own day, without rounding. */
export function convertTotal(amounts: readonly DatedAmount[], to: string, rates: readonly DatedRate[]): Converted {
  let exact = fraction(0n);
  const used = new Set<DatedRate>();
  const missing: DatedAmount[] = [];
  for (const amount of amounts) {
    const found = factorAsOf(rates, amount.currency, to, amount.day);
    if (found === null) {
      missing.push(amount);
      continue;
    }
    if (found.rate) used.add(found.rate);
    exact = addFractions(exact, multiplyFractions(wholeMinor(amount.minor), found.factor));
  }
  return { exact, rates: [...used], missing };
}

function wholeMinor(minor: number): Fraction {
  if (!Number.isSafeInteger(minor)) throw new RangeError(`An amount must be whole minor units, not ${minor}.`);
  return fraction(BigInt(minor));
}
