/**
 * ISO 4217 currencies whose minor unit is not a hundredth; every other currency has two digits.
 * Source: ISO 4217 list one, as in reference `12-iso4217`. Locale data of programming libraries differs on purpose (cash
 * digits), so it must not be used for money that is stored.
 */
const digitsByCurrency: ReadonlyMap<string, number> = new Map([
  ...'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'.split(' ').map((code) => [code, 0] as const),
  ...'BHD IQD JOD KWD LYD OMR TND'.split(' ').map((code) => [code, 3] as const),
  ...'CLF UYW'.split(' ').map((code) => [code, 4] as const),
]);

/** Decimal digits of a currency's minor unit. @throws RangeError when the code is not three capital letters */
export function minorUnitDigits(currency: string): number {
  if (!/^[A-Z]{3}$/.test(currency)) throw new RangeError(`"${currency}" is not an ISO 4217 currency code.`);
  return digitsByCurrency.get(currency) ?? 2;
}
