import type { CopyValue } from './copy-text.ts';
import { readFindings } from './findings.ts';
import type { RowValues } from './row-values.ts';

/** Columns of the staging table of findings after `line`, in the order that `readFindingRow` gives them. */
export const findingColumns = [
  ['plant_id', 'uuid'],
  ['report', 'text'],
  ['findings', 'jsonb'],
] as const;

/** One row of the file as a row of the staging table; null where it is refused (the faults are in `row`). */
export function readFindingRow(row: RowValues): CopyValue[] | null {
  const plant = row.reference('plant', null);
  const report = row.value('report');
  const findings = statedIn(row);
  return row.faults.length > 0 || !plant ? null : [plant.id, report, findings];
}

/** The findings of a cell that holds several, else the one that two columns state. */
function statedIn(row: RowValues): string | null {
  const several = row.value('findings');
  const [finding, answer] = [row.value('finding'), row.value('answer')];
  const field = several === null && finding !== null ? 'answer' : 'findings';
  if (several === null && finding === null) return row.refuse(field, 'missing');
  if (several === null && answer === null) return row.refuse(field, 'missing');
  const read = readFindings(several ?? `${finding} = ${answer}`);
  return typeof read === 'string' ? row.refuse(field, 'not_a_finding') : JSON.stringify(read);
}
