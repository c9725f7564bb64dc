import { z } from 'zod';
import { causes } from '#analysis/suggestion/causes.ts';
import type { KeptDecision } from '#contracts/evidence.ts';
import { Answer, FindingCode } from '#contracts/finding-catalogue.ts';
import { Cause } from '#contracts/taxonomy.ts';
import type { Database } from '#db/client.ts';
import { queryOne, sql } from '#db/sql.ts';

const DecisionRow = z.object({
  cause: Cause,
  suggested: Cause,
  probabilities: z.array(z.number()),
  by: z.string(),
  at: z.coerce.date().transform((at) => at.toISOString()),
  reason: z.string().nullable(),
  modelVersion: z.int(),
  answers: z.partialRecord(FindingCode, Answer),
});

/** The decision on a report that holds, with what was said and known before it. */
export async function readDecision(db: Database, plantId: string, failureId: string): Promise<KeptDecision | null> {
  const row = await queryOne(
    db.pool,
    sql`select c.cause, c.suggested, c.probabilities, c.actor as by, c.at, c.reason, c.model_version as "modelVersion", c.answers
      from confirmation c where c.plant_id = ${plantId}::uuid and c.failure_id = ${failureId}::uuid and c.superseded_at is null`,
    DecisionRow,
    { name: 'kept-decision' },
  );
  if (!row) return null;
  const { probabilities, answers, ...decision } = row;
  return {
    ...decision,
    probability: probabilities[(causes as readonly string[]).indexOf(row.cause)] ?? 0,
    findings: Object.entries(answers).map(([code, answer]) => ({ code: code as FindingCode, answer })),
  };
}
