import { listDesk } from '#api/features/complaints/desk.service.ts';
import type { Actor, PlantScope } from '#api/platform/actor.ts';
import type { ReviewContent } from '#contracts/review-content.ts';
import type { Database } from '#db/client.ts';

const listed = 6;

/** Open complaints, the clock that runs out first on top, as they stand now. */
export async function complaintsPart(
  db: Database,
  reader: Actor,
  scope: PlantScope,
  at: Date,
): Promise<ReviewContent['complaints']> {
  const { items, counts } = await listDesk(db, reader, scope, { state: 'open', limit: listed }, at);
  return { ...counts, list: items };
}
