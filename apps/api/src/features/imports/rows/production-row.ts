import type { CopyValue } from './copy-text.ts';
import type { RowValues } from './row-values.ts';

/** Columns of the staging table of production after `line`, in the order that `readProduction` gives them. */
export const productionColumns = [
  ['plant_id', 'uuid'],
  ['day', 'date'],
  ['line_id', 'uuid'],
  ['housing_id', 'uuid'],
  ['terminal_id', 'uuid'],
  ['units', 'bigint'],
  ['terminals', 'bigint'],
] as const;

/** One row of the file as a row of the staging table; null where it is refused (the faults are in `row`). */
export function readProduction(row: RowValues, today: ReadonlyMap<string, string>): CopyValue[] | null {
  const plant = row.reference('plant', null);
  const day = row.value('day')?.slice(0, 10) ?? null;
  if (!plant || day === null) return null;
  if (day > today.get(plant.id)!) row.refuse('day', 'in_future');
  const values: CopyValue[] = [
    plant.id,
    day,
    row.reference('line', plant.id)?.id ?? null,
    row.reference('housing', null)?.id ?? null,
    row.reference('terminal', null)?.id ?? null,
    row.value('units'),
    row.value('terminals'),
  ];
  return row.faults.length > 0 ? null : values;
}
