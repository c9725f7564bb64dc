import { holds, requirePlant } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { newId } from '#api/platform/ids.ts';
import { changedMeanwhile, notFound, problem, unknownReference } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Production, ProductionInput } from '#contracts/production.ts';
import type { Tx } from '#db/client.ts';
import { findMissing, findRow, lockRows, upsertRows } from './production.queries.ts';

const keyOf = (row: Pick<ProductionInput, 'day' | 'lineId' | 'housingId' | 'terminalId'>) =>
  [row.day, row.lineId, row.housingId, row.terminalId].join(' ');

function requireOnePlant(rows: readonly ProductionInput[]): string {
  const plantId = rows[0]!.plantId;
  const other = rows.findIndex((row) => row.plantId !== plantId);
  if (other >= 0)
    throw problem('not_consistent', 'Send the production of one plant at a time.', [
      { path: `body/rows/${other}/plantId`, message: 'is another plant than in the first row' },
    ]);
  return plantId;
}

function requireDistinct(rows: readonly ProductionInput[]): void {
  const seen = new Set<string>();
  rows.forEach((row, index) => {
    if (seen.has(keyOf(row)))
      throw problem(
        'not_consistent',
        'The same day, line, housing and terminal come twice. Add the two rows up and send one.',
        [{ path: `body/rows/${index}`, message: 'repeats an earlier row' }],
      );
    seen.add(keyOf(row));
  });
}

async function requireReferences(tx: Tx, plantId: string, rows: readonly ProductionInput[], at: Date): Promise<void> {
  const missing = await findMissing(tx, plantId, rows, at);
  if (!missing) throw unknownReference('rows/0/plantId', 'plant');
  rows.forEach((row, index) => {
    const path = `rows/${index}`;
    if (row.lineId && missing.lines.includes(row.lineId)) throw unknownReference(`${path}/lineId`, 'line');
    if (row.housingId && missing.housings.includes(row.housingId))
      throw unknownReference(`${path}/housingId`, 'housing');
    if (row.terminalId && missing.terminals.includes(row.terminalId))
      throw unknownReference(`${path}/terminalId`, 'terminal');
    if (row.day > missing.today)
      throw problem(
        'not_consistent',
        `At the plant it is ${missing.today}. Report what was built, not what is planned.`,
        [{ path: `body/${path}/day`, message: 'lies in the future' }],
      );
  });
}

export async function putProduction(unit: Unit, rows: readonly ProductionInput[]) {
  const plantId = requireOnePlant(rows);
  requirePlant(unit.actor, 'production.write', plantId);
  requireDistinct(rows);
  await requireReferences(unit.tx, plantId, rows, unit.at);
  const ids = rows.map(() => newId());
  const before = await lockRows(unit.tx, plantId, rows, ids);
  const written = await upsertRows(unit.tx, plantId, rows, ids);
  const touched = new Set(written.map(keyOf));
  const added = written.filter((row) => row.added).length;
  const plant = await unit.tx.plant.findUniqueOrThrow({ where: { id: plantId }, select: { code: true } });
  if (written.length > 0)
    await recordChange(unit, {
      action: 'reported',
      entity: 'production',
      entityId: plantId,
      label: plant.code,
      plantId,
      before: { rows: before.filter((row) => touched.has(keyOf(row))) },
      after: { rows: written.map(({ added: _, ...row }) => row) },
    });
  return { added, changed: written.length - added, same: rows.length - written.length };
}

export async function correctProduction(
  unit: Unit,
  id: string,
  version: number,
  figures: { units: number; terminals: number },
): Promise<Production> {
  const before = await findRow(unit.tx, id);
  if (!before || !holds(unit.actor, 'production.read', before.plantId)) throw notFound('production row');
  requirePlant(unit.actor, 'production.write', before.plantId);
  const { count } = await unit.tx.production.updateMany({
    where: { id, plantId: before.plantId, version },
    data: { ...figures, version: { increment: 1 } },
  });
  if (count === 0) throw changedMeanwhile();
  const after = (await findRow(unit.tx, id))!;
  await recordChange(unit, {
    action: 'corrected',
    entity: 'production',
    entityId: id,
    label: `${after.plantCode} ${after.day}`,
    plantId: after.plantId,
    before,
    after,
  });
  return after;
}
