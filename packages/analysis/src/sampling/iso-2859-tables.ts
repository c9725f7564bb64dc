/**
 * Tables of ISO 2859-1:1999, single sampling, normal inspection, as data. Source: the standard's Tables 1 and 2-A, equal to
 * MIL-STD-105E Tables I and II-A (public domain); references `13-iso2859-*`.
 */

export type InspectionLevel = 'S-1' | 'S-2' | 'S-3' | 'S-4' | 'I' | 'II' | 'III';

export const inspectionLevels: readonly InspectionLevel[] = ['S-1', 'S-2', 'S-3', 'S-4', 'I', 'II', 'III'];

/** Largest lot of each row (null: no limit) and its code letters in the order of `inspectionLevels`. */
export const codeLetterRows: readonly { largestLot: number | null; letters: string }[] = [
  { largestLot: 8, letters: 'AAAAAAB' },
  { largestLot: 15, letters: 'AAAAABC' },
  { largestLot: 25, letters: 'AABBBCD' },
  { largestLot: 50, letters: 'ABBCCDE' },
  { largestLot: 90, letters: 'BBCCCEF' },
  { largestLot: 150, letters: 'BBCDDFG' },
  { largestLot: 280, letters: 'BCDEEGH' },
  { largestLot: 500, letters: 'BCDEFHJ' },
  { largestLot: 1200, letters: 'CCEFGJK' },
  { largestLot: 3200, letters: 'CDEGHKL' },
  { largestLot: 10_000, letters: 'CDFGJLM' },
  { largestLot: 35_000, letters: 'CDFHKMN' },
  { largestLot: 150_000, letters: 'DEGJLNP' },
  { largestLot: 500_000, letters: 'DEGJMPQ' },
  { largestLot: null, letters: 'DEHKNQR' },
];

/** Rows of the master table: code letter and sample size. */
export const sampleSizes: readonly { letter: string; size: number }[] = [
  { letter: 'A', size: 2 },
  { letter: 'B', size: 3 },
  { letter: 'C', size: 5 },
  { letter: 'D', size: 8 },
  { letter: 'E', size: 13 },
  { letter: 'F', size: 20 },
  { letter: 'G', size: 32 },
  { letter: 'H', size: 50 },
  { letter: 'J', size: 80 },
  { letter: 'K', size: 125 },
  { letter: 'L', size: 200 },
  { letter: 'M', size: 315 },
  { letter: 'N', size: 500 },
  { letter: 'P', size: 800 },
  { letter: 'Q', size: 1250 },
  { letter: 'R', size: 2000 },
];

/** Columns of the master table that mean per cent nonconforming; higher ones count nonconformities per 100 items. */
export const acceptanceQualityLimits = [
  0.01, 0.015, 0.025, 0.04, 0.065, 0.1, 0.15, 0.25, 0.4, 0.65, 1, 1.5, 2.5, 4, 6.5, 10,
] as const;

export type AcceptanceQualityLimit = (typeof acceptanceQualityLimits)[number];

/** Acceptance number of a cell, or the direction to the first plan that holds one. */
export type MasterCell = number | 'up' | 'down';

/**
 * The master table is the same along its diagonals (row + column, both from 0): before 14 an arrow down, Ac 0 on 14, an
 * arrow up on 15, down on 16, then Ac 1, 2, 3, 5, 7, 10, 14, 21 from 17 to 24, and arrows up after it.
 */
const acceptanceOnDiagonal: readonly MasterCell[] = [0, 'up', 'down', 1, 2, 3, 5, 7, 10, 14, 21];
const firstDiagonal = 14;

/** A cell of the master table. An arrow that would leave the table turns round: up in row A, down in the last (from memory). */
export function masterCell(row: number, column: number): MasterCell {
  const place = row + column - firstDiagonal;
  if (place < 0) return 'down';
  const cell = acceptanceOnDiagonal[place] ?? 'up';
  if (cell === 'up' && row === 0) return 'down';
  return cell === 'down' && row === sampleSizes.length - 1 ? 'up' : cell;
}
