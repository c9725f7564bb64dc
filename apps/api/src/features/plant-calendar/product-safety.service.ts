import { listColleagues } from '#api/features/people/colleagues.service.ts';
import { type Actor, requirePlant } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { changedMeanwhile, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { ProductSafety } from '#contracts/plant-calendar.ts';
import type { Tx } from '#db/client.ts';
import { requireReadable } from './plant-calendar.service.ts';

/** Who answers for product safety at a plant; null where nobody is named. */
export async function safetyPersonOf(tx: Tx, plantId: string): Promise<{ id: string; name: string } | null> {
  const duty = await tx.productSafetyDuty.findUnique({ where: { plantId } });
  if (!duty?.personId) return null;
  return tx.person.findFirst({ where: { id: duty.personId, retiredAt: null }, select: { id: true, name: true } });
}

export async function readProductSafety(tx: Tx, actor: Actor, plantId: string): Promise<ProductSafety> {
  await requireReadable(tx, actor, plantId);
  const duty = await tx.productSafetyDuty.findUnique({ where: { plantId } });
  const person = await safetyPersonOf(tx, plantId);
  return { plantId, personId: person?.id ?? null, personName: person?.name ?? null, version: duty?.version ?? 1 };
}

async function requireAble(tx: Tx, plantId: string, personId: string): Promise<void> {
  const able = await listColleagues(tx, plantId, 'complaints.write');
  if (able.some(({ id }) => id === personId)) return;
  throw problem(
    'unknown_reference',
    'Choose somebody who may work on complaints at this plant: an engineer, a manager or an administrator.',
    [{ path: 'body/personId', message: 'is nobody with such a role at the plant' }],
  );
}

export async function saveProductSafety(
  unit: Unit,
  plantId: string,
  version: number,
  personId: string | null,
): Promise<ProductSafety> {
  const { tx, actor } = unit;
  const { code } = await requireReadable(tx, actor, plantId);
  requirePlant(actor, 'plantData.write', plantId);
  if (personId !== null) await requireAble(tx, plantId, personId);
  const before = await readProductSafety(tx, actor, plantId);
  const created =
    version === 1
      ? await tx.productSafetyDuty.createMany({ data: [{ plantId, personId, version: 2 }], skipDuplicates: true })
      : { count: 0 };
  if (created.count === 0) {
    const { count } = await tx.productSafetyDuty.updateMany({
      where: { plantId, version },
      data: { personId, version: { increment: 1 } },
    });
    if (count === 0) throw changedMeanwhile();
  }
  const after = await readProductSafety(tx, actor, plantId);
  await recordChange(unit, {
    action: 'updated',
    entity: 'product_safety',
    entityId: plantId,
    label: code,
    plantId,
    before,
    after,
  });
  return after;
}
