import { z } from 'zod';
import { type Actor, holds } from '#api/platform/actor.ts';
import { unknownReference } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { ActionOrigin } from '#contracts/actions.ts';
import { sql, txOne } from '#db/sql.ts';
import type { Stored } from './action.queries.ts';

const Place = z.object({ id: z.string(), plants: z.array(z.string()) });

const places = {
  complaintId: (id: string) =>
    sql`select c.id, array[c.plant_id::text] as plants from complaint c where c.id = ${id}::uuid`,
  containmentId: (id: string) =>
    sql`select c.id, array[c.plant_id::text] as plants from containment c where c.id = ${id}::uuid`,
  caseId: (id: string) =>
    sql`select c.id, array[c.plant_id::text] as plants from eight_d_case c where c.id = ${id}::uuid`,
  reviewId: (id: string) => sql`select r.id, r.plant_ids::text[] as plants from review r where r.id = ${id}::uuid`,
};
const rights = {
  complaintId: 'complaints.read',
  containmentId: 'containment.read',
  caseId: 'cases.read',
  reviewId: 'reviews.read',
} as const;

/** What an action is said to come from exists, and whoever opens it may read it. */
export async function requireOrigin({ tx, actor }: Unit, origin: ActionOrigin): Promise<void> {
  for (const name of Object.keys(places) as (keyof typeof places)[]) {
    const id = origin[name];
    if (id === null) continue;
    const place = await txOne(tx, places[name](id), Place);
    if (!place?.plants.every((plantId) => holds(actor, rights[name], plantId)))
      throw unknownReference(name, 'origin of the action');
  }
}

/** The origins that the reader may open; one at a foreign plant is not named. */
export function visibleOrigin(actor: Actor, action: Stored): ActionOrigin {
  const seen = (right: (typeof rights)[keyof typeof rights], id: string | null, plantId: string | null) =>
    id !== null && plantId !== null && holds(actor, right, plantId) ? id : null;
  return {
    complaintId: seen('complaints.read', action.complaintId, action.complaintPlant),
    containmentId: seen('containment.read', action.containmentId, action.containmentPlant),
    caseId: seen('cases.read', action.caseId, action.casePlant),
    reviewId: seen('reviews.read', action.reviewId, action.plantId),
  };
}
