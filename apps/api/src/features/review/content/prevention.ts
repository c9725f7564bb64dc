import { bestWhatIfs } from '#api/features/what-if/what-if.service.ts';
import type { PlantScope } from '#api/platform/actor.ts';
import type { ReviewContent } from '#contracts/review-content.ts';
import type { Database } from '#db/client.ts';

/** Of each plant the saved scenario whose best set is worth most, with what it would bring in a year. */
export async function preventionPart(db: Database, scope: PlantScope): Promise<ReviewContent['prevention']> {
  const scenarios = await bestWhatIfs(db, scope);
  return scenarios.flatMap(({ best, ...scenario }) =>
    best
      ? [
          {
            ...scenario,
            netPerYear: best.netPerYear,
            paybackYears: best.paybackYears,
            probabilityPays: best.probabilityPays,
          },
        ]
      : [],
  );
}
