import {
  type AcceptanceQualityLimit,
  acceptanceQualityLimits,
  codeLetterRows,
  type InspectionLevel,
  inspectionLevels,
  masterCell,
  sampleSizes,
} from './iso-2859-tables.ts';

export type SamplingPlan = {
  /** by lot size and inspection level */
  codeLetter: string;
  /** of the plan used, after following arrows */
  planLetter: string;
  sampleSize: number;
  accept: number;
  reject: number;
  /** the sample is the whole lot: inspect every item */
  everyItem: boolean;
};

/**
 * Single sampling plan of ISO 2859-1 for normal inspection. Where the table shows an arrow, sample size and acceptance
 * number both come from the plan it points to; a sample as large as the lot means inspecting all of it.
 *
 * The plan is made for a running series of lots. It limits how often good lots are refused; it does not show that a
 * suspect lot is clean: see `upperLimitAfterSample`.
 *
 * @param lotSize items, at least 2
 * @param limit acceptance quality limit in per cent nonconforming
 */
export function samplingPlan(
  lotSize: number,
  limit: AcceptanceQualityLimit,
  level: InspectionLevel = 'II',
): SamplingPlan {
  if (!Number.isSafeInteger(lotSize) || lotSize < 2) {
    throw new RangeError(`lotSize must be a whole number of 2 or more, not ${lotSize}.`);
  }
  const range = codeLetterRows.find(({ largestLot }) => largestLot === null || lotSize <= largestLot)!;
  const codeLetter = range.letters[inspectionLevels.indexOf(level)]!;
  const column = acceptanceQualityLimits.indexOf(limit);
  if (column < 0) throw new RangeError(`${limit} is no acceptance quality limit of the table.`);

  let row = sampleSizes.findIndex(({ letter }) => letter === codeLetter);
  let cell = masterCell(row, column);
  for (const step = cell === 'up' ? -1 : 1; typeof cell === 'string'; cell = masterCell(row, column)) row += step;
  const { letter, size } = sampleSizes[row]!;
  return {
    codeLetter,
    planLetter: letter,
    sampleSize: Math.min(size, lotSize),
    accept: cell,
    reject: cell + 1,
    everyItem: size >= lotSize,
  };
}
