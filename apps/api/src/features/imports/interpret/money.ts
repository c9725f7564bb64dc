import { type DecimalMark, readDecimal } from './number.ts';
import { type CellReader, Refusal } from './refusal.ts';

const mostMinor = 1_000_000_000_000;

/**
 * An amount in integer minor units from decimal text. More than three decimals come from a calculation and are rounded half
 * up; three where the currency has fewer may be a thousands mark and are refused, as are negative amounts.
 */
export function toMinor(decimal: string, digits: number): number | Refusal {
  if (decimal.startsWith('-')) return new Refusal('too_small');
  const [whole = '0', fraction = ''] = decimal.split('.');
  if (fraction.length > digits && fraction.length <= 3) return new Refusal('too_precise');
  const minor =
    Number(whole + fraction.slice(0, digits).padEnd(digits, '0')) + (Number(fraction[digits] ?? 0) >= 5 ? 1 : 0);
  return minor > mostMinor ? new Refusal('too_large') : minor;
}

/** A reader of amounts that gives decimal text; the currency of the row decides about minor units afterwards. */
export function amountReader(mark: DecimalMark): CellReader {
  return (cell) => {
    if (typeof cell === 'string' && cell.trim() === '') return null;
    if (typeof cell === 'number' && !Number.isInteger(cell) && Math.abs(cell) < 1e12) return cell.toFixed(4);
    return readDecimal(cell, mark) ?? new Refusal('not_a_number');
  };
}
