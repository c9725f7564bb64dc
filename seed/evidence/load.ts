import type pg from 'pg';
import type { Answers } from '#analysis/suggestion/suggest.ts';
import { computedFindings } from '#api/features/evidence/computed.rules.ts';
import { FactsRow, factsOf } from '#api/features/evidence/findings.queries.ts';
import { sql } from '#db/sql.ts';
import type { Filed } from '../tables/reports.ts';
import { plantOf } from '../tables/reports.ts';
import type { Table } from '../tables/row.ts';
import type { World } from '../world.ts';
import { type Case, drawCases } from './cases.ts';
import { replay } from './replay.ts';
import { evidenceTables } from './tables.ts';

/** What the data answered on each decided report at the moment of its decision, asked as the service asks. */
async function factsThen(client: pg.Client, { id }: World, cases: readonly Case[]): Promise<Map<string, FactsRow>> {
  const decided = cases.filter(({ decision }) => decision);
  const { text, values } = factsOf(sql`select * from unnest(
    ${decided.map(({ filed }) => id(`plant ${plantOf(filed.report).code}`))}::uuid[], ${decided.map(({ filed }) => filed.id)}::uuid[],
    ${decided.map(({ decision }) => new Date(decision!.at).toISOString())}::timestamptz[]) as a (plant_id, id, known_at)`);
  const { rows } = await client.query(text, [...values]);
  return new Map(rows.map((row) => FactsRow.parse(row)).map((row) => [row.id, row]));
}

function answersThen({ filed, taken }: Case, facts: ReadonlyMap<string, FactsRow>): Answers {
  const row = facts.get(filed.id);
  // how far a tool was then from its service is not on record
  const computed = row ? [...computedFindings({ ...row, toolOverdue: null })] : [];
  return new Map<string, 'yes' | 'no' | 'could_not_tell'>([
    ...taken.map(({ code, answer }) => [code, answer] as const),
    ...computed,
  ]);
}

/** Evidence for reports that are loaded already. */
export async function makeEvidence(client: pg.Client, world: World, filed: readonly Filed[]): Promise<Table[]> {
  const cases = drawCases(world, filed);
  const facts = await factsThen(client, world, cases);
  const { decisions, learned } = replay(filed, cases, (it) => answersThen(it, facts));
  return evidenceTables(world, cases, decisions, learned);
}
