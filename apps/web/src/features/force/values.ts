import { mostValues } from '#contracts/force.ts';

export interface ReadValues {
  values: number[];
  /** The first piece that is no force above zero. */
  wrong: string | null;
  tooMany: boolean;
}

const number = /^\d{1,5}(?:[.,]\d{1,6})?$/;

/** Values as typed or pasted from a column: parted by line ends, blanks, tabs or semicolons; with decimal point or comma. */
export function readValues(text: string): ReadValues {
  const pieces = text
    .split(/[\s;]+/)
    .map((piece) => piece.replace(/,$/, ''))
    .filter((piece) => piece !== '');
  const values = pieces.map((piece) => (number.test(piece) ? Number(piece.replace(',', '.')) : Number.NaN));
  const wrong = pieces[values.findIndex((value) => !(value > 0))] ?? null;
  return { values, wrong, tooMany: values.length > mostValues };
}
