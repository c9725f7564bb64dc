import { type ForceUnit, toNewtons } from '#analysis/force/units.ts';
import type { CopyValue } from './copy-text.ts';
import type { RowValues } from './row-values.ts';

/** Columns of the staging table of force samples after `line`, in the order that `readForce` gives them. */
export const forceColumns = [
  ['plant_id', 'uuid'],
  ['day', 'date'],
  ['kind', 'force_kind'],
  ['terminal_id', 'uuid'],
  ['tool_id', 'uuid'],
  ['housing_id', 'uuid'],
  ['wire_id', 'uuid'],
  ['reference', 'text'],
  ['unit', 'force_unit'],
  ['entered', 'double precision'],
  ['newtons', 'double precision'],
  ['minimum_n', 'double precision'],
] as const;

/** One row of the file as a row of the staging table; null where it is refused (the faults are in `row`). */
export function readForce(row: RowValues, today: ReadonlyMap<string, string>): CopyValue[] | null {
  const plant = row.reference('plant', null);
  const day = row.value('day')?.slice(0, 10) ?? null;
  if (!plant || day === null) return null;
  if (day > today.get(plant.id)!) row.refuse('day', 'in_future');
  const unit = row.value('forceUnit') as ForceUnit | null;
  const entered = row.value('force');
  const minimum = row.value('minForce');
  const newtons = (value: string | null) => value && unit && toNewtons(Number(value), unit);
  const values: CopyValue[] = [
    plant.id,
    day,
    row.value('forceKind'),
    row.reference('terminal', null)?.id ?? null,
    row.reference('tool', plant.id)?.id ?? null,
    row.reference('housing', null)?.id ?? null,
    row.reference('wire', null)?.id ?? null,
    row.value('externalRef'),
    unit,
    entered,
    newtons(entered),
    newtons(minimum),
  ];
  return row.faults.length > 0 ? null : values;
}
