/** Tells other plants what they share with a containment; they see what is suspect, never whose complaint it is. */
import { notify } from '#api/features/notices/notify.service.ts';
import { listColleagues } from '#api/features/people/colleagues.service.ts';
import { newId } from '#api/platform/ids.ts';
import type { Unit } from '#api/platform/unit.ts';
import { txOne } from '#db/sql.ts';
import { containmentSql, StoredContainment } from './containment.queries.ts';
import { plantsSharing } from './sharing.queries.ts';

/** Plants that share the scope as it is now and were not told before; those told before keep what they were told. */
export async function tellPlants(unit: Unit, id: string): Promise<void> {
  const { tx, at } = unit;
  const containment = (await txOne(tx, containmentSql(id), StoredContainment))!;
  const told = new Set(containment.plants.map(({ plantId }) => plantId));
  const parts = [...containment.housingIds, ...containment.terminalIds].map((part) => containment.names[part] ?? '');
  for (const { plantId, shares } of await plantsSharing(tx, containment)) {
    if (told.has(plantId)) continue;
    const alertId = newId();
    await tx.containmentAlert.create({ data: { id: alertId, containmentId: id, plantId, shares, toldAt: at } });
    const managers = await listColleagues(tx, plantId, 'complaints.consent');
    await notify(unit, {
      to: managers.map((person) => person.id),
      kind: 'containment_alert',
      key: `containment alert ${alertId}`,
      facts: {
        from: containment.plantCode,
        number: containment.number,
        parts: [...parts, ...containment.reelLots, ...containment.housingLots].join(', ') || '–',
      },
      link: '/containment/alerts',
      plantId,
    });
  }
}
