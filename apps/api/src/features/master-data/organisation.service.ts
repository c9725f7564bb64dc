import { requireGroup } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { changedMeanwhile } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Organisation } from '#contracts/master-data.ts';
import type { Tx } from '#db/client.ts';

export async function readOrganisation(tx: Tx): Promise<Organisation> {
  const { name, currency, version, demoLoadedAt } = await tx.organisation.findUniqueOrThrow({ where: { id: 1 } });
  return { name, currency, version, demo: demoLoadedAt !== null };
}

export async function updateOrganisation(
  unit: Unit,
  version: number,
  input: { name: string; currency: string },
): Promise<Organisation> {
  requireGroup(unit.actor, 'groupData.write');
  const before = await readOrganisation(unit.tx);
  const { count } = await unit.tx.organisation.updateMany({
    where: { id: 1, version },
    data: { ...input, version: { increment: 1 } },
  });
  if (count === 0) throw changedMeanwhile();
  const after = await readOrganisation(unit.tx);
  await recordChange(unit, {
    action: 'updated',
    entity: 'organisation',
    entityId: '1',
    label: after.name,
    plantId: null,
    before,
    after,
  });
  return after;
}
