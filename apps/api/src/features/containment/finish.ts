import { recordChange } from '#api/platform/audit.ts';
import { changedMeanwhile } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Containment } from '#contracts/containment.ts';
import type { Prisma } from '#db/generated/client.ts';
import { txOne } from '#db/sql.ts';
import { containmentSql, StoredContainment } from './containment.queries.ts';
import { presentContainment } from './open-containment.service.ts';

/** Changes the containment if it still has the version that was read. */
export async function saveContainment(
  { tx }: Unit,
  id: string,
  version: number,
  data: Prisma.ContainmentUncheckedUpdateManyInput,
): Promise<void> {
  const { count } = await tx.containment.updateMany({
    where: { id, version },
    data: { ...data, version: { increment: 1 } },
  });
  if (count === 0) throw changedMeanwhile();
}

/** Ends every write: audit row, and the containment as it stands now. */
export async function finish(
  unit: Unit,
  action: string,
  before: StoredContainment | null,
  id: string,
): Promise<Containment> {
  const after = (await txOne(unit.tx, containmentSql(id), StoredContainment))!;
  await recordChange(unit, {
    action,
    entity: 'containment',
    entityId: id,
    label: after.number,
    plantId: after.plantId,
    before,
    after,
  });
  return presentContainment(unit.tx, after);
}
