/**
 * Decimal places of currencies, ISO 4217:2015 list one (values from memory): two unless listed.
 * JavaScript's own `Intl` follows everyday usage instead (HUF, IDR and others without decimals).
 */
const exceptions: Readonly<Record<number, readonly string[]>> = {
  0: [
    'BIF',
    'CLP',
    'DJF',
    'GNF',
    'ISK',
    'JPY',
    'KMF',
    'KRW',
    'PYG',
    'RWF',
    'UGX',
    'UYI',
    'VND',
    'VUV',
    'XAF',
    'XOF',
    'XPF',
  ],
  3: ['BHD', 'IQD', 'JOD', 'KWD', 'LYD', 'OMR', 'TND'],
  4: ['CLF', 'UYW'],
};

const digits = new Map(
  Object.entries(exceptions).flatMap(([count, codes]) => codes.map((code) => [code, Number(count)] as const)),
);

/** How many decimal places the minor unit of `currency` (ISO 4217 code) stands for. */
export const minorDigits = (currency: string): number => digits.get(currency) ?? 2;

/**
 * Currencies in use, ISO 4217:2015 list one (from memory; a test compares them with the names that `Intl` knows).
 * Funds, metals and testing codes are left out.
 */
export const currencies: readonly string[] =
  `AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BHD BIF BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CLP CNY
COP CRC CUP CVE CZK DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GNF GTQ GYD HKD HNL HTG HUF IDR ILS INR IQD
IRR ISK JMD JOD JPY KES KGS KHR KMF KPW KRW KWD KYD KZT LAK LBP LKR LRD LSL LYD MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK
MXN MYR MZN NAD NGN NIO NOK NPR NZD OMR PAB PEN PGK PHP PKR PLN PYG QAR RON RSD RUB RWF SAR SBD SCR SDG SEK SGD SHP SLE SOS
SRD SSP STN SVC SYP SZL THB TJS TMT TND TOP TRY TTD TWD TZS UAH UGX USD UYU UZS VES VND VUV WST XAF XCD XOF XPF YER ZAR ZMW
ZWG`.split(/\s/);

const known = new Set(currencies);
export const isCurrency = (code: string): boolean => known.has(code);
