import { type Actor, plantsWith, requireGroup, requirePlant } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { newId } from '#api/platform/ids.ts';
import { problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Subscriptions } from '#contracts/review.ts';
import type { Database, Tx } from '#db/client.ts';

/** Which reviews the person is sent; of what they may no longer read, nothing is said and nothing sent. */
export async function readSubscriptions(tx: Tx | Database['prisma'], actor: Actor): Promise<Subscriptions> {
  const rows = await tx.reviewSubscription.findMany({ where: { personId: actor.id }, orderBy: { since: 'asc' } });
  const scope = plantsWith(actor, 'reviews.read');
  const plants = rows.flatMap(({ plantId }) => plantId ?? []);
  return {
    plants: scope === 'all' ? plants : plants.filter((id) => scope.includes(id)),
    group: scope === 'all' && rows.some(({ plantId }) => plantId === null),
  };
}

export async function changeSubscriptions(unit: Unit, wanted: Subscriptions): Promise<Subscriptions> {
  const { tx, actor, at } = unit;
  if (actor.kind !== 'person')
    throw problem('not_allowed', 'Reviews are sent to people. Sign in as the person who is to get them.');
  for (const plantId of wanted.plants) requirePlant(actor, 'reviews.read', plantId);
  if (wanted.group) requireGroup(actor, 'reviews.read');
  const found = await tx.plant.count({ where: { id: { in: wanted.plants } } });
  if (found < new Set(wanted.plants).size)
    throw problem('unknown_reference', 'There is no such plant. Choose one from the list.', [
      { path: 'body/plants', message: 'no such plant' },
    ]);
  const before = await readSubscriptions(tx, actor);
  const places = new Set<string | null>([...wanted.plants, ...(wanted.group ? [null] : [])]);
  const rows = await tx.reviewSubscription.findMany({ where: { personId: actor.id } });
  await tx.reviewSubscription.deleteMany({
    where: { id: { in: rows.filter(({ plantId }) => !places.has(plantId)).map(({ id }) => id) } },
  });
  const had = new Set(rows.map(({ plantId }) => plantId));
  await tx.reviewSubscription.createMany({
    data: [...places]
      .filter((plantId) => !had.has(plantId))
      .map((plantId) => ({ id: newId(), personId: actor.id, plantId, since: at })),
  });
  const after = await readSubscriptions(tx, actor);
  await recordChange(unit, {
    action: 'changed',
    entity: 'review_subscription',
    entityId: actor.id,
    label: actor.name,
    plantId: null,
    before,
    after,
  });
  return after;
}
