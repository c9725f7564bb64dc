import type { ReportRow } from '#contracts/failures.ts';

/** The estimated cost of a report in minor units, from its items or, where it has none, from the standard cost; null without any. */
export const estimateOf = ({ estimatedMinor, standardMinor }: ReportRow['cost']): number | null =>
  standardMinor ?? (estimatedMinor === 0 ? null : estimatedMinor);
