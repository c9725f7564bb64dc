import { type DecimalMark, readDecimal } from './number.ts';
import type { CellReader } from './refusal.ts';
import { Refusal } from './refusal.ts';

/** A reader of whole numbers between `min` and `max`. `12,0` is whole; `12,5` is refused, never rounded. */
export function integerReader(mark: DecimalMark, min: number, max: number): CellReader {
  return (cell) => {
    if (typeof cell === 'string' && cell.trim() === '') return null;
    const decimal = readDecimal(cell, mark);
    if (decimal === null) return new Refusal('not_a_number');
    if (decimal.includes('.')) return new Refusal('not_whole');
    const value = BigInt(decimal);
    if (value < BigInt(min)) return new Refusal('too_small');
    return value > BigInt(max) ? new Refusal('too_large') : decimal;
  };
}
