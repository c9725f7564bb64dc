import { minorDigits } from '#contracts/shared/currency.ts';

/** One dated exchange rate on the way: how many units of `quote` one unit of `base` buys, as a decimal text. */
export interface Rate {
  base: string;
  quote: string;
  rate: string;
  /** The day from which it holds. */
  on: string;
}

interface Ratio {
  over: bigint;
  under: bigint;
}

function ratioOf(decimal: string): Ratio {
  const [whole = '0', fraction = ''] = decimal.split('.');
  return { over: BigInt(whole + fraction), under: 10n ** BigInt(fraction.length) };
}

/** Half away from zero, as money is rounded by hand. */
function roundedQuotient(over: bigint, under: bigint): bigint {
  const sign = over < 0n ? -1n : 1n;
  return (sign * (2n * sign * over + under)) / (2n * under);
}

/**
 * Converts minor units of `from` into minor units of `to` over one or two rates, each used as it stands or inverted, and
 * rounds once at the end. Exact: no binary fractions. Each rate must continue where the one before ended.
 */
export function convertMinor(amountMinor: number, from: string, to: string, rates: readonly Rate[]): bigint {
  let over = BigInt(amountMinor) * 10n ** BigInt(minorDigits(to));
  let under = 10n ** BigInt(minorDigits(from));
  let currency = from;
  for (const { base, quote, rate } of rates) {
    if (currency !== base && currency !== quote) throw new RangeError(`No way from ${currency} over ${base}/${quote}`);
    const ratio = ratioOf(rate);
    const forward = currency === base;
    over *= forward ? ratio.over : ratio.under;
    under *= forward ? ratio.under : ratio.over;
    currency = forward ? quote : base;
  }
  if (currency !== to) throw new RangeError(`The rates end at ${currency}, not at ${to}`);
  return roundedQuotient(over, under);
}

const pairOf = (rates: readonly Rate[], one: string, other: string): Rate | undefined =>
  rates
    .filter((it) => (it.base === one && it.quote === other) || (it.base === other && it.quote === one))
    .sort((a, b) => b.on.localeCompare(a.on) || Number(b.base === one) - Number(a.base === one))[0];

/**
 * The way from one currency to another: the newest direct or inverse rate, else over the group's currency; null where
 * there is none. Rates later than the day wanted must have been left out already.
 */
export function findWay(rates: readonly Rate[], from: string, to: string, group: string): Rate[] | null {
  if (from === to) return [];
  const direct = pairOf(rates, from, to);
  if (direct) return [direct];
  const toGroup = pairOf(rates, from, group);
  const fromGroup = pairOf(rates, group, to);
  return toGroup && fromGroup ? [toGroup, fromGroup] : null;
}
