import type { Cell, RawRow } from './raw-row.ts';

const looksLikeData = /^[\d.,:/\s%€$+-]+$/;

/**
 * Index of the row that names the columns among the first rows of a file: the first one nearly as wide as the rows of the file
 * are, whose cells are all different words. Titles and notes above it are narrower. 0 where no row stands out.
 */
export function findHeaderRow(rows: readonly RawRow[]): number {
  const widths = rows.map(filledCells);
  const typical = median(widths);
  const wide = widths.map((width) => width >= Math.max(1, typical * 0.6));
  const named = rows.findIndex((row, index) => wide[index] && isNames(row.cells));
  return Math.max(0, named >= 0 ? named : wide.indexOf(true));
}

const filledCells = (row: RawRow): number => row.cells.filter(isFilled).length;
const isFilled = (cell: Cell): boolean => typeof cell === 'number' || cell.trim() !== '';

function isNames(cells: readonly Cell[]): boolean {
  const filled = cells.filter(isFilled);
  const names = filled.filter((cell) => typeof cell === 'string' && !looksLikeData.test(cell.trim()));
  return names.length === filled.length && new Set(names).size === names.length;
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? 0;
}
