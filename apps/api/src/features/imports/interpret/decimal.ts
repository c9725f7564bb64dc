import { type DecimalMark, readDecimal } from './number.ts';
import { type CellReader, Refusal } from './refusal.ts';

/** A reader of measured values between `min` and `max`. */
export function decimalReader(mark: DecimalMark, min: number, max: number): CellReader {
  return (cell) => {
    if (typeof cell === 'string' && cell.trim() === '') return null;
    const decimal = readDecimal(cell, mark);
    if (decimal === null) return new Refusal('not_a_number');
    if (Number(decimal) < min) return new Refusal('too_small');
    return Number(decimal) > max ? new Refusal('too_large') : decimal;
  };
}
