/** Numbers as people write them, with a decimal point or a decimal comma; a column decides which. */
import type { decimalMarks } from '#contracts/imports.ts';
import type { Cell } from '../formats/raw-row.ts';

export type DecimalMark = (typeof decimalMarks)[number];

/** How many values of a column can only be read one way, and how many could be read either way with different results. */
export interface NumberEvidence {
  point: number;
  comma: number;
  either: number;
  /** One value that could be read either way, to show when asking. */
  example: string | null;
}

export const noNumberEvidence = (): NumberEvidence => ({ point: 0, comma: 0, either: 0, example: null });

/** Blanks, no-break blanks, apostrophes and thin blanks between groups of thousands. */
const groupBlanks = /(?<=\d)[\s\u00a0\u2009\u202f'’](?=\d{3}(?:\D|$))/gu;
const currencySigns = /^(?:[€$£¥₹]|[A-Z]{3}(?![A-Z]))\s*|\s*(?:[€$£¥₹]|(?<![A-Z])[A-Z]{3})$/gu;

/** Counts a value of the column. Values of any other kind count for nothing: the reader refuses them later. */
export function observeNumber(evidence: NumberEvidence, cell: Cell): void {
  if (typeof cell === 'number') return;
  const text = bare(cell);
  const commas = count(text, ',');
  const points = count(text, '.');
  if (commas + points === 0) return;
  const asPoint = parse(text, 'point');
  const asComma = parse(text, 'comma');
  if (asPoint !== null && asComma !== null) {
    if (asPoint === asComma) return;
    evidence.either += 1;
    evidence.example ??= cell;
  } else if (asPoint !== null) evidence.point += 1;
  else if (asComma !== null) evidence.comma += 1;
}

/** The mark that every value allows; 'ask' where values allow both or contradict each other. */
export function decideMark({ point, comma, either }: NumberEvidence): DecimalMark | 'ask' {
  if (point > 0 && comma > 0) return 'ask';
  if (comma > 0) return 'comma';
  return either > 0 && point === 0 ? 'ask' : 'point';
}

/** The plain decimal text of a number, such as `-1234.5`, exact to the last digit; null where the text is no number. */
export function readDecimal(cell: Cell, mark: DecimalMark): string | null {
  return typeof cell === 'number' ? plain(cell) : parse(bare(cell), mark);
}

/** A spreadsheet stores 15 significant digits; what follows is noise of the binary fraction. */
const plain = (number: number): string => {
  const text = String(Number(number.toPrecision(15)));
  return text.includes('e') ? BigInt(Math.round(number)).toString() : text;
};

function bare(cell: string): string {
  const text = cell.trim().replace(currencySigns, '').replace(groupBlanks, '');
  if (/^\(.*\)$/.test(text)) return `-${text.slice(1, -1)}`;
  return /^[^-]*-$/.test(text) ? `-${text.slice(0, -1)}` : text.replace(/^\u2212/, '-');
}

const patterns: Record<DecimalMark, RegExp> = {
  point: /^[+-]?(?:\d+|[1-9]\d{0,2}(?:,\d{2,3})*,\d{3})?(?:\.\d*)?$/,
  comma: /^[+-]?(?:\d+|[1-9]\d{0,2}(?:\.\d{2,3})*\.\d{3})?(?:,\d*)?$/,
};
const scientific = /^[+-]?\d+(?:[.,]\d+)?e[+-]?\d{1,3}$/i;

function parse(text: string, mark: DecimalMark): string | null {
  if (scientific.test(text)) return wide(Number(text.replace(',', '.')));
  if (!patterns[mark].test(text) || !/\d/.test(text)) return null;
  const western = mark === 'point' ? text.replaceAll(',', '') : text.replaceAll('.', '').replace(',', '.');
  const [, sign, whole, fraction] = /^([+-]?)(\d*)\.?(\d*)$/.exec(western)!;
  const digits = whole!.replace(/^0+(?=\d)/, '') || '0';
  const decimals = fraction!.replace(/0+$/, '');
  const value = decimals ? `${digits}.${decimals}` : digits;
  return sign === '-' && value !== '0' ? `-${value}` : value;
}

function wide(number: number): string | null {
  if (!Number.isFinite(number)) return null;
  return Number.isInteger(number) ? BigInt(number).toString() : number.toFixed(12).replace(/\.?0+$/, '');
}

const count = (text: string, sign: string): number => text.split(sign).length - 1;
