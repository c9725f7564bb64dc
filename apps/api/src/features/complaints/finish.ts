import { recordChange } from '#api/platform/audit.ts';
import { changedMeanwhile } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Complaint } from '#contracts/complaints.ts';
import type { Prisma } from '#db/generated/client.ts';
import { txOne } from '#db/sql.ts';
import { complaintSql, StoredComplaint } from './complaint.queries.ts';
import { presentComplaint } from './open-complaint.service.ts';

/** Changes the complaint if it still has the version that was read. */
export async function saveComplaint(
  { tx }: Unit,
  id: string,
  version: number,
  data: Prisma.ComplaintUncheckedUpdateManyInput,
): Promise<void> {
  const { count } = await tx.complaint.updateMany({
    where: { id, version },
    data: { ...data, version: { increment: 1 } },
  });
  if (count === 0) throw changedMeanwhile();
}

/** Ends every write: audit row, and the complaint as it stands now. */
export async function finish(
  unit: Unit,
  action: string,
  before: StoredComplaint | null,
  id: string,
): Promise<Complaint> {
  const after = (await txOne(unit.tx, complaintSql(id), StoredComplaint))!;
  await recordChange(unit, {
    action,
    entity: 'complaint',
    entityId: id,
    label: after.number,
    plantId: after.plantId,
    before,
    after,
  });
  return presentComplaint(unit.tx, unit.actor, after, unit.at);
}
