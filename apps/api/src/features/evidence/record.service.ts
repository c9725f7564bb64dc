import { cohensKappa } from '#analysis/agreement/cohens-kappa.ts';
import { notComputable } from '#analysis/estimate.ts';
import { meanInterval } from '#analysis/numeric/mean-interval.ts';
import { proportion } from '#analysis/rates/proportion.ts';
import { brierScore } from '#analysis/scoring/brier-score.ts';
import { calibration } from '#analysis/scoring/calibration.ts';
import { logLoss } from '#analysis/scoring/log-loss.ts';
import type { ScoredCase } from '#analysis/scoring/scored-case.ts';
import { causes } from '#analysis/suggestion/causes.ts';
import type { PlantScope } from '#api/platform/actor.ts';
import type { TrackRecord } from '#contracts/evidence.ts';
import { causes as allCauses } from '#contracts/taxonomy.ts';
import type { Database } from '#db/client.ts';
import { queryOne, queryRows } from '#db/sql.ts';
import {
  JudgedCase,
  judgedCasesSql,
  OpinionPair,
  opinionPairsSql,
  StandingRow,
  standingSql,
} from './record.queries.ts';

type Standing = TrackRecord['better'];
/** Under this many judged cases nothing is said of the suggestion's worth. */
const fewest = 30;
const latest = 1000;

const placeOf = (cause: string) => (causes as readonly string[]).indexOf(cause);
const hits = (cases: readonly JudgedCase[], field: 'suggested' | 'frequent') =>
  cases.filter((it) => it[field] === it.cause).length;
const share = (cases: readonly JudgedCase[], field: 'suggested' | 'frequent') =>
  proportion(hits(cases, field), cases.length);

/** Accuracy − baseline on the same cases: the mean of the paired differences with its interval. */
const advantageOf = (cases: readonly JudgedCase[]) =>
  meanInterval(cases.map((it) => Number(it.suggested === it.cause) - Number(it.frequent === it.cause)));

function standingOf(cases: number, advantage: TrackRecord['advantage']): Standing {
  if (cases < fewest || advantage.value === null) return 'too_few';
  return advantage.interval.low > 0 ? 'better' : 'not_better';
}

/** Judges the latest decisions of the whole group: is the suggestion worth showing at full strength? */
export async function readStanding(db: Database): Promise<Standing> {
  const row = await queryOne(db.pool, standingSql(latest), StandingRow, { name: 'suggestion-standing' });
  const { cases, onlySuggestion, onlyFrequent } = row!;
  const differences = [
    ...Array<number>(onlySuggestion).fill(1),
    ...Array<number>(onlyFrequent).fill(-1),
    ...Array<number>(cases - onlySuggestion - onlyFrequent).fill(0),
  ];
  return standingOf(cases, meanInterval(differences));
}

function confusionOf(cases: readonly JudgedCase[]): TrackRecord['confusion'] {
  const counts = new Map<string, TrackRecord['confusion'][number]>();
  for (const { suggested, cause } of cases) {
    const cell = counts.get(`${suggested} ${cause}`) ?? { suggested, confirmed: cause, cases: 0 };
    cell.cases += 1;
    counts.set(`${suggested} ${cause}`, cell);
  }
  return [...counts.values()];
}

function agreementOf(pairs: readonly { first: string; second: string }[]): TrackRecord['agreement'] {
  const table = allCauses.map((first) =>
    allCauses.map((second) => pairs.filter((pair) => pair.first === first && pair.second === second).length),
  );
  const { kappa, observed } = cohensKappa(table);
  return { pairs: pairs.length, kappa, observed };
}

/** Reliability part of the multi-class Brier score: that of each cause, added up. */
function reliabilityOf(scored: readonly ScoredCase[]): number | null {
  if (scored.length === 0) return null;
  return causes.reduce((sum, _, place) => {
    const statements = scored.map(({ probabilities, outcome }) => ({
      said: Math.min(1, probabilities[place]!),
      came: outcome === place,
    }));
    return sum + calibration(statements).reliability!;
  }, 0);
}

const groupBy = (cases: readonly JudgedCase[], key: (it: JudgedCase) => string) => [...Map.groupBy(cases, key)];

/** The suggestion's own record, from cases judged before they were learned from. */
export async function readRecord(
  db: Database,
  scope: PlantScope,
  period: { from?: string | undefined; to?: string | undefined },
): Promise<TrackRecord> {
  const cases = await queryRows(db.pool, judgedCasesSql(scope, period), JudgedCase);
  const pairs = await queryRows(db.pool, opinionPairsSql(scope), OpinionPair);
  const scored = cases.map(({ probabilities, cause }) => ({ probabilities, outcome: placeOf(cause) }));
  const leads = cases.map(({ probabilities, suggested, cause }) => ({
    said: probabilities[placeOf(suggested)] ?? 0,
    came: suggested === cause,
  }));
  const { bins, error } = calibration(leads);
  const advantage = advantageOf(cases);
  const none = notComputable('no_reports');
  return {
    cases: cases.length,
    accuracy: share(cases, 'suggested'),
    baseline: share(cases, 'frequent'),
    advantage,
    better: standingOf(cases.length, advantage),
    logLoss: cases.length ? logLoss(scored) : none,
    baselineLogLoss: cases.length
      ? logLoss(cases.map(({ base, cause }) => ({ probabilities: base, outcome: placeOf(cause) })))
      : none,
    brier: cases.length ? brierScore(scored) : none,
    reliability: reliabilityOf(scored),
    calibration: bins,
    calibrationError: error,
    confusion: confusionOf(cases),
    byCause: groupBy(cases, ({ cause }) => cause).map(([, all]) => ({
      cause: all[0]!.cause,
      cases: all.length,
      accuracy: share(all, 'suggested'),
    })),
    byPlant: groupBy(cases, ({ plantId }) => plantId).map(([plantId, all]) => ({
      plantId,
      plantCode: all[0]!.plantCode,
      cases: all.length,
      accuracy: share(all, 'suggested'),
      baseline: share(all, 'frequent'),
    })),
    agreement: agreementOf(pairs),
    blind: proportion(pairs.filter(({ second, suggested }) => second === suggested).length, pairs.length),
  };
}
