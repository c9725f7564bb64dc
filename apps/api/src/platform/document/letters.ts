/** Which letters the document's fonts have: Latin, Greek and Cyrillic. */

/** Signs that the fonts lack, and what stands for them. */
const stand: Readonly<Record<string, string>> = {
  '→': '->',
  '←': '<-',
  '↑': '^',
  '↓': 'v',
  '⇒': '=>',
  '✓': '√',
  '✔': '√',
  '✗': 'x',
  '✘': 'x',
  '▪': '•',
  '■': '•',
  '●': '•',
  '◦': '•',
  '□': '•',
  '☐': '•',
  '☑': '√',
  '\u202f': '\u00a0',
  '\u2009': ' ',
};

/** Text as the fonts can show it. */
export const inOurLetters = (text: string): string =>
  text.normalize('NFC').replace(/[→←↑↓⇒✓✔✗✘▪■●◦□☐☑\u202f\u2009]/g, (sign) => stand[sign] ?? sign);

const scripts = [
  'Han',
  'Hiragana',
  'Katakana',
  'Hangul',
  'Arabic',
  'Hebrew',
  'Thai',
  'Devanagari',
  'Armenian',
  'Georgian',
];
const ours = /[\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{Script=Common}\p{Script=Inherited}]/u;

/** Scripts in the text for which a PDF would show empty boxes; a DOCX shows them with the reader's own fonts. */
export function unreadableScripts(text: string): string[] {
  const strange = [...text].filter((letter) => !ours.test(letter)).join('');
  const named = scripts.filter((script) => new RegExp(`\\p{Script=${script}}`, 'u').test(strange));
  const pictograms = /\p{Extended_Pictographic}/u.test(text.replace(/[©®™↔]/g, '')) ? ['Emoji'] : [];
  return [...(strange && named.length === 0 ? ['?'] : named), ...pictograms];
}
