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

/**
 * An amount in another currency, exactly: minor × rate × 10^(digits of `to` - digits of `from`) minor units, unrounded.
 *
 * @param minor whole minor units of `from`
 * @param rate decimal, units of `to` for one unit of `from`, above 0
 * @throws RangeError when minor is no whole number, a code or the rate is malformed
 */
export function convertExactly(minor: number, from: string, to: string, rate: string): Fraction {
  if (!Number.isSafeInteger(minor)) throw new RangeError(`An amount must be whole minor units, not ${minor}.`);
  const factor = fractionOfDecimal(rate);
  if (factor.numerator <= 0n) throw new RangeError(`An exchange rate must be above 0, not ${rate}.`);
  const shift = minorUnitDigits(to) - minorUnitDigits(from);
  const power = 10n ** BigInt(Math.abs(shift));
  const scale = shift >= 0 ? fraction(power) : fraction(1n, power);
  return multiplyFractions(multiplyFractions(fraction(BigInt(minor)), factor), scale);
}

/** Adds amounts of any currencies up in one, each at the rate of its own day, without rounding. */
export function convertTotal(amounts: readonly DatedAmount[], to: string, rates: readonly DatedRate[]): Converted {
  let exact = fraction(0n);
  const used = new Set<DatedRate>();
  const missing: DatedAmount[] = [];
  for (const amount of amounts) {
    if (amount.currency === to) {
      exact = addFractions(exact, convertExactly(amount.minor, to, to, '1'));
      continue;
    }
    const rate = rateAsOf(rates, amount.currency, to, amount.day);
    if (rate === null) {
      missing.push(amount);
      continue;
    }
    used.add(rate);
    exact = addFractions(exact, convertExactly(amount.minor, amount.currency, to, rate.rate));
  }
  return { exact, rates: [...used], missing };
}
