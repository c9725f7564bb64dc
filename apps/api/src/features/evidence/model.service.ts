import type { z } from 'zod';
import { type CauseName, causes, type PerCause, perCause } from '#analysis/suggestion/causes.ts';
import { buildModel, type PairCounts } from '#analysis/suggestion/learn.ts';
import { baseRates, type Seen, type SeenByFinding, type SuggestionModel } from '#analysis/suggestion/model.ts';
import { findingPriors } from '#analysis/suggestion/priors.ts';
import { evidenceOf, fitTemperature } from '#analysis/suggestion/temperature.ts';
import type { Cause } from '#contracts/taxonomy.ts';
import type { Tx } from '#db/client.ts';
import { type Sql, txRows } from '#db/sql.ts';
import * as query from './model.queries.ts';

export interface LoadedModel extends SuggestionModel {
  version: number;
  /** The cause decided on most often so far: what a suggestion must beat. */
  frequent: CauseName;
}

/** How many of the latest decisions say how sure the suggestion may be. */
const judgedCases = 1000;
const groupOf = new Map(findingPriors.map(({ code, group }) => [code, group]));

/** By plant: everything but the base rates, which differ by part, for the state of what was learned. */
const cache = new Map<string, { state: string; model: SuggestionModel }>();

function seenBy(rows: readonly z.output<typeof query.AnswerRow>[], own: boolean): SeenByFinding {
  const seen = new Map<string, Seen>();
  for (const row of rows) {
    if (row.own !== own || row.cause === 'undetermined') continue;
    const counts = seen.get(row.code) ?? { yes: perCause(() => 0), no: perCause(() => 0) };
    counts.yes[row.cause] = row.yes;
    counts.no[row.cause] = row.no;
    seen.set(row.code, counts);
  }
  return seen;
}

export const toPerCause = (values: readonly number[]): PerCause =>
  perCause((cause) => values[causes.indexOf(cause)] ?? 0);
export const fromPerCause = (values: PerCause): number[] => causes.map((cause) => values[cause]);

async function learn(tx: Tx, plantId: string): Promise<SuggestionModel> {
  const rows = <Row extends z.ZodType>(fragment: Sql, row: Row) =>
    txRows(tx, fragment, row) as Promise<z.output<Row>[]>;
  const answers = await rows(query.answersSql(plantId), query.AnswerRow);
  const pairs = await rows(query.pairsSql, query.PairRow);
  const judged = await rows(query.judgedSql(judgedCases), query.JudgedRow);
  const zero = perCause(() => 0);
  return buildModel(findingPriors, {
    others: seenBy(answers, false),
    plant: seenBy(answers, true),
    base: { group: zero, plant: zero, part: zero },
    pairs: pairs.flatMap(
      ({ first, cause, counts }): PairCounts =>
        cause === 'undetermined'
          ? []
          : [{ group: groupOf.get(first) ?? '', cause, counts: counts as [number, number, number, number] }],
    ),
    temperature: fitTemperature(
      judged.map(({ cause, probabilities, base, temperature }) => ({
        cause: cause as CauseName,
        base: toPerCause(base),
        evidence: evidenceOf(toPerCause(probabilities), toPerCause(base), temperature),
      })),
    ),
  });
}

/** What of a report the model needs to know. Its own decided cause is left out of the base rates, so that it cannot speak for itself. */
export interface Asked {
  plantId: string;
  housingId: string | null;
  cause: Cause | null;
}

/** The model as it is now for a report's plant and part. Learned counts are read again only after something was learned. */
export async function loadModel(tx: Tx, { plantId, housingId, cause: own }: Asked): Promise<LoadedModel> {
  const [[row], tally] = await Promise.all([
    txRows(tx, query.versionSql(plantId), query.VersionRow),
    txRows(tx, query.tallySql(plantId, housingId), query.TallyRow),
  ]);
  const { version, state, cases, plantCases } = row!;
  const known = cache.get(plantId);
  const model = known?.state === state ? known.model : await learn(tx, plantId);
  cache.set(plantId, { state, model });
  const ownPlace = housingId === null ? 'plant' : 'part';
  const count = (field: 'others' | 'plant' | 'part') =>
    perCause((cause) =>
      Math.max(
        0,
        (tally.find((row) => row.cause === cause)?.[field] ?? 0) - Number(cause === own && field === ownPlace),
      ),
    );
  const base = { group: count('others'), plant: count('plant'), part: count('part') };
  const all = perCause((cause) => base.group[cause] + base.plant[cause] + base.part[cause]);
  return {
    ...model,
    version,
    ...baseRates(base),
    cases: { group: cases, plant: plantCases },
    frequent: causes.reduce((best, cause) => (all[cause] > all[best] ? cause : best)),
  };
}
