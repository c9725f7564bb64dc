/** Takes names of other customers and amounts of money out of text that leaves the house. */

export interface Masked {
  words: string;
  kind: 'customer' | 'money';
}
export interface MaskOptions {
  /** customers whose names and codes must not be read */
  customers: readonly { code: string; name: string }[];
  locale: 'en' | 'de';
}

const replacements = {
  en: { customer: 'another customer', money: '[amount]' },
  de: { customer: 'ein anderer Kunde', money: '[Betrag]' },
} as const;

const currencyWords = [
  '€|\\$|£|¥|₹|zł|Kč|R\\$|US\\$|CN¥|Fr\\.',
  '(?:EUR|USD|GBP|CHF|PLN|CZK|HUF|RON|SEK|NOK|DKK|CNY|RMB|JPY|INR|MXN|BRL|CAD|AUD|TRY|ZAR|KRW|MAD|TND)(?![A-Za-z])',
  '(?:euros?|dollars?|pounds?|yuan|yen|pesos?|zloty|cents?)(?![A-Za-z])',
].join('|');
const number = "\\d[\\d.,\u00a0\u202f’']*(?:\\s?\\d{3})*(?:[.,]\\d+)?(?:[.,][-–—]+)?";
const scale = '(?:\\s?(?:k|K|m|M|Mio\\.?|mio\\.?|Tsd\\.?|million|thousand|Millionen|Tausend)(?![A-Za-z]))?';
const money = new RegExp(
  `(?<![\\p{L}\\p{N}])(?:(?:${currencyWords})\\s?${number}${scale}|${number}${scale}\\s?(?:${currencyWords}))`,
  'giu',
);

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
/** Letters as people may have typed them: any space or hyphen between the words, with or without a possessive. */
const nameWords = (name: string) => escaped(name.trim()).replace(/\\?[\s-]+/g, '[\\s\u00a0-]*');

const whole = (words: readonly string[], flags: string): RegExp | null => {
  if (words.length === 0) return null;
  const longestFirst = [...new Set(words)].sort((a, b) => b.length - a.length);
  return new RegExp(`(?<![\\p{L}\\p{N}])(?:${longestFirst.join('|')})(?:['’]s|s)?(?![\\p{L}\\p{N}])`, flags);
};

/**
 * Whole names in any case; what people shorten them to (the first word, the code) only as it is written or in capitals, so that
 * an orange wire and cavity B2 stay what they are.
 */
function customerPatterns(customers: MaskOptions['customers']): RegExp[] {
  const firsts = customers.map(({ name }) => name.trim().split(/[\s-]+/)[0] ?? '').filter((word) => word.length >= 5);
  const codes = customers.map(({ code }) => code.trim()).filter((code) => code.length >= 3 && /\p{L}/u.test(code));
  const short = [...firsts.flatMap((word) => [word, word.toUpperCase()]), ...codes].map(escaped);
  const names = customers.map(({ name }) => nameWords(name));
  return [whole(names, 'giu'), whole(short, 'gu')].filter((pattern) => pattern !== null);
}

/** The text without them, and what was taken out, in order. Text that was normalised (NFC) compares alike. */
export function maskOthers(text: string, { customers, locale }: MaskOptions): { text: string; masked: Masked[] } {
  const masked: Masked[] = [];
  const take = (kind: Masked['kind']) => (words: string) => {
    masked.push({ words, kind });
    return replacements[locale][kind];
  };
  const named = customerPatterns(customers).reduce(
    (rest, pattern) => rest.replace(pattern, take('customer')),
    text.normalize('NFC'),
  );
  return { text: named.replace(money, take('money')), masked };
}
