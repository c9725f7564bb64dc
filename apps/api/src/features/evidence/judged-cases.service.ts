import { causes } from '#analysis/suggestion/causes.ts';
import type { PlantScope } from '#api/platform/actor.ts';
import type { Cause } from '#contracts/taxonomy.ts';
import type { Database } from '#db/client.ts';
import { queryRows } from '#db/sql.ts';
import { ListedCase, listedCasesSql, type Period } from './record.queries.ts';

/** The newest judged cases, each with the probability that its confirmed cause had been given. */
export async function listJudgedCases(
  db: Database,
  scope: PlantScope,
  query: Period & { suggested?: Cause | undefined; confirmed?: Cause | undefined },
) {
  const rows = await queryRows(db.pool, listedCasesSql(scope, query, query), ListedCase);
  return {
    items: rows.map(({ probabilities, ...row }) => ({
      ...row,
      probability: probabilities[(causes as readonly string[]).indexOf(row.confirmed)] ?? 0,
    })),
  };
}
