import type { Day } from '../calendar/day.ts';

/** What a closed fix covered; `tool: null` covers every tool. */
export type FixedFault = { part: string; cause: string; tool: string | null; cleanPoint: Day };

export type ReportedFault = {
  key: string;
  part: string;
  cause: string | null;
  tool: string | null;
  builtOn: Day | null;
  foundOn: Day;
};

/**
 * Reports that a fix should have prevented: same part, cause and tool, built on or after the clean point.
 *
 * Where the cause, the tool or the day of building is missing, or the day of building is and it was found after the clean
 * point, the report is only possibly one. Common practice, no source.
 *
 * @returns keys of the reports in the order given
 */
export function recurrences(
  fixed: FixedFault,
  reports: readonly ReportedFault[],
): { certain: string[]; possible: string[] } {
  const certain: string[] = [];
  const possible: string[] = [];
  for (const report of reports) {
    if (report.part !== fixed.part) continue;
    if (report.cause !== null && report.cause !== fixed.cause) continue;
    if (fixed.tool !== null && report.tool !== null && report.tool !== fixed.tool) continue;
    if ((report.builtOn ?? report.foundOn) < fixed.cleanPoint) continue;
    const known = report.cause !== null && report.builtOn !== null && (fixed.tool === null || report.tool !== null);
    (known ? certain : possible).push(report.key);
  }
  return { certain, possible };
}
