import type { Tx } from '#db/client.ts';

const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;

/** A report of one plant by its number or id; null where the plant has none. */
export async function findReport(
  tx: Tx,
  plantId: string,
  named: string,
): Promise<{ id: string; number: string; voided: boolean } | null> {
  const row = await tx.failure.findFirst({
    where: { plantId, ...(uuid.test(named) ? { id: named } : { number: named }) },
    select: { id: true, number: true, voidedAt: true },
  });
  return row && { id: row.id, number: row.number, voided: row.voidedAt !== null };
}
