import { recordChange } from '#api/platform/audit.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Report } from '#contracts/failures.ts';
import { sql } from '#db/sql.ts';
import { refreshFigures } from './figures.ts';
import { findReport } from './reports.repository.ts';

/** Ends every write to a report: derived figures, audit row, and the report as it is now. */
export async function finish(
  unit: Unit,
  action: string,
  before: Report | null,
  { id, plantId }: Pick<Report, 'id' | 'plantId'>,
): Promise<Report> {
  await refreshFigures(unit.tx, sql`f.id = ${id}::uuid and f.plant_id = ${plantId}::uuid`);
  const after = (await findReport(unit.tx, id))!;
  await recordChange(unit, { action, entity: 'failure', entityId: id, label: after.number, plantId, before, after });
  return after;
}
