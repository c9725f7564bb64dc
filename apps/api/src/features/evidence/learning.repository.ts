import { findingPriors } from '#analysis/suggestion/priors.ts';
import type { Cause } from '#contracts/taxonomy.ts';
import type { Tx } from '#db/client.ts';
import { type Sql, sql, txExecute } from '#db/sql.ts';

/** Runs a statement in the transaction at hand. */
export type Run = (statement: Sql) => Promise<unknown>;
export type Answered = Readonly<Record<string, string>>;
const groupOf = new Map(findingPriors.map(({ code, group }) => [code, group]));

/** The in-group pairs of a case, each as first, second and the place of its cell: yes-yes, yes-no, no-yes, no-no. */
function pairsOf(told: [string, string][]): { first: string[]; second: string[]; cell: number[] } {
  const pairs = { first: [] as string[], second: [] as string[], cell: [] as number[] };
  told.forEach(([first, firstAnswer], place) => {
    for (const [second, secondAnswer] of told.slice(place + 1)) {
      if (!groupOf.has(first) || groupOf.get(first) !== groupOf.get(second)) continue;
      pairs.first.push(first);
      pairs.second.push(second);
      pairs.cell.push((firstAnswer === 'yes' ? 0 : 2) + (secondAnswer === 'yes' ? 0 : 1));
    }
  });
  return pairs;
}

/** Lets two decisions on one report wait for each other, so that the second sees the version that the first made. */
export const lockReport = (tx: Tx, id: string): Promise<number> =>
  txExecute(tx, sql`select 1 from failure where id = ${id}::uuid for update`);

/**
 * Adds a confirmed case to what was learned (step 1), or takes it out again (step -1). The plant's version row is locked first, so
 * that learners of one plant wait for each other.
 */
export async function learnCase(
  run: Run,
  plantId: string,
  cause: Cause,
  answers: Answered,
  step: 1 | -1,
): Promise<void> {
  await run(
    sql`insert into learned_version as v (plant_id, version, cases) values (${plantId}::uuid, 1, ${step}::int)
    on conflict (plant_id) do update set version = v.version + 1, cases = v.cases + ${step}::int`,
  );
  const told = Object.entries(answers)
    .filter(([, answer]) => answer !== 'could_not_tell')
    .sort(([a], [b]) => (a < b ? -1 : 1));
  await run(
    sql`insert into learned_answer as a (plant_id, code, cause, yes, no)
    select ${plantId}::uuid, t.code, ${cause}::cause, t.yes * ${step}::int, (1 - t.yes) * ${step}::int
    from unnest(${told.map(([code]) => code)}::text[], ${told.map(([, answer]) => Number(answer === 'yes'))}::int[]) t(code, yes)
    on conflict (plant_id, code, cause) do update set yes = a.yes + excluded.yes, no = a.no + excluded.no`,
  );
  const { first, second, cell } = pairsOf(told);
  await run(
    sql`insert into learned_pair as p (plant_id, first, second, cause, yes_yes, yes_no, no_yes, no_no)
    select ${plantId}::uuid, t.first, t.second, ${cause}::cause, (t.cell = 0)::int * ${step}::int, (t.cell = 1)::int * ${step}::int,
      (t.cell = 2)::int * ${step}::int, (t.cell = 3)::int * ${step}::int
    from unnest(${first}::text[], ${second}::text[], ${cell}::int[]) t(first, second, cell)
    on conflict (plant_id, first, second, cause) do update set yes_yes = p.yes_yes + excluded.yes_yes,
      yes_no = p.yes_no + excluded.yes_no, no_yes = p.no_yes + excluded.no_yes, no_no = p.no_no + excluded.no_no`,
  );
}
