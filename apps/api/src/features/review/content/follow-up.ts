import { effectsPart, overduePart, promisesOf } from '#api/features/actions/review.service.ts';
import type { Actor, PlantScope } from '#api/platform/actor.ts';
import type { ReviewContent } from '#contracts/review-content.ts';
import type { Database } from '#db/client.ts';

interface Followed {
  reader: Actor;
  seen: PlantScope;
  plantIds: readonly string[];
  weekFrom: string;
  at: Date;
}

/** What became of earlier promises, what is overdue, and whether the fixes held. */
export async function followUpPart(
  db: Database,
  { reader, seen, plantIds, weekFrom, at }: Followed,
): Promise<Pick<ReviewContent, 'promises' | 'actions' | 'effects'>> {
  const [promises, actions, effects] = await Promise.all([
    promisesOf(db, plantIds, weekFrom, at),
    overduePart(db, reader, seen, at),
    effectsPart(db, plantIds, weekFrom),
  ]);
  return { promises, actions, effects };
}
