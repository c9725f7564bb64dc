import type { CellReader } from './refusal.ts';
import { Refusal } from './refusal.ts';

const unprintable = /(?![\t\n\r])\p{Cc}/u;

/** A reader of free text: blanks at the ends go, characters that no screen shows are refused. */
export function textReader(longest: number): CellReader {
  return (cell) => {
    const text = String(cell).trim();
    if (text === '') return null;
    if (unprintable.test(text) || !text.isWellFormed()) return new Refusal('bad_character');
    return text.length > longest ? new Refusal('too_long') : text;
  };
}

/** Text of a file as it can be shown and kept, whatever it holds. */
export const showable = (text: string): string => text.replace(/\p{Cc}/gu, '\ufffd').toWellFormed();

const separators = /[,;/|+\n]/;

/** Several short texts in one cell, parted by `,` `;` `/` `|` `+` or line ends; each once. */
export function partsOf(text: string): string[] {
  if (!separators.test(text)) return [text];
  return [...new Set(text.split(separators).map((part) => part.trim()))].filter((part) => part !== '');
}
