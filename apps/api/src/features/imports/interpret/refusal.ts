import type { RefusalCode } from '#contracts/imports.ts';
import type { Cell } from '../formats/raw-row.ts';

/** A value that cannot be taken, and why. */
export class Refusal {
  readonly code: RefusalCode;
  constructor(code: RefusalCode) {
    this.code = code;
  }
}

/** Reads one cell into the text that the database takes; null for a blank cell. */
export type CellReader = (cell: Cell) => string | null | Refusal;

const remembered = 50_000;

/** Remembers what a reader made of each text: columns repeat themselves. */
export function remembering(reader: CellReader): CellReader {
  const known = new Map<Cell, string | null | Refusal>();
  return (cell) => {
    const before = known.get(cell);
    if (before !== undefined) return before;
    if (known.size >= remembered) known.clear();
    const value = reader(cell);
    known.set(cell, value);
    return value;
  };
}
