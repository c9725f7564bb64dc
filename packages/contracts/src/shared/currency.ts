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
