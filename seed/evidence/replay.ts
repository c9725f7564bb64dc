import { type CauseName, causes } from '#analysis/suggestion/causes.ts';
import { baseRates, type SuggestionModel } from '#analysis/suggestion/model.ts';
import { type Answers, probabilities } from '#analysis/suggestion/suggest.ts';
import { evidenceOf, fitTemperature, type Judged } from '#analysis/suggestion/temperature.ts';
import type { Filed } from '../tables/reports.ts';
import { plantOf } from '../tables/reports.ts';
import type { Case } from './cases.ts';
import { Learned, Tally } from './learned.ts';
import { isCause } from './other-world.ts';

/** A decision as it was made: what the suggestion said before it learned from the case. */
export interface Replayed {
  case: Case;
  cause: CauseName;
  at: number;
  answers: Answers;
  suggested: CauseName;
  frequent: CauseName;
  probabilities: number[];
  base: number[];
  temperature: number;
  version: number;
}

interface Sorting {
  at: number;
  plant: string;
  housing: string | null;
  before: string | undefined;
  after: string;
}

/** The service learns anew after every case; here that is done after every so many, which leaves the judgements older, never wiser. */
const relearnAfter = 10;
const refitAfter = 150;
const latest = 1000;

const housingOf = ({ report: { fault, knows } }: Filed) => (knows.housing ? fault.run.program.housing.code : null);

function sortingsOf(filed: readonly Filed[]): Sorting[] {
  return filed
    .flatMap((it) =>
      it.report.sortings.map((sorting, place) => ({
        at: sorting.at,
        plant: plantOf(it.report).code,
        housing: housingOf(it),
        before: it.report.sortings[place - 1]?.cause,
        after: sorting.cause,
      })),
    )
    .sort((a, b) => a.at - b.at);
}

/**
 * Decides the cases in the order of time: each is judged from what was known and learned until then, and learned from only afterwards.
 * `answersOf` are all findings of a case, those that the data answered then included.
 */
export function replay(
  filed: readonly Filed[],
  cases: readonly Case[],
  answersOf: (it: Case) => Answers,
): { decisions: Replayed[]; learned: Learned } {
  const learned = new Learned();
  const tally = new Tally();
  const sortings = sortingsOf(filed);
  const judged: Judged[] = [];
  let temperature = fitTemperature([]);
  let models = new Map<string, { version: number; model: SuggestionModel }>();
  let next = 0;
  const decided = cases.filter(({ decision }) => decision).sort((a, b) => a.decision!.at - b.decision!.at);
  const decisions = decided.map((it, place): Replayed => {
    const { at } = it.decision!;
    const cause = it.decision!.cause as CauseName;
    for (; next < sortings.length && sortings[next]!.at < at; next++) count(tally, sortings[next]!);
    if (place % refitAfter === 0) temperature = fitTemperature(judged.slice(-latest));
    const plant = plantOf(it.filed.report).code;
    if (place % relearnAfter === 0) models = new Map();
    const known = models.get(plant) ?? { version: learned.version, model: learned.model(plant, temperature) };
    models.set(plant, known);
    const { version } = known;
    const model = { ...known.model, ...baseRates(withoutItself(tally, it.filed)) };
    const answers = answersOf(it);
    const p = probabilities(model, answers);
    learned.learn(plant, cause, answers);
    judged.push({ evidence: evidenceOf(p, model.base, model.temperature), base: model.base, cause });
    return {
      case: it,
      ...{ cause, at, answers, version },
      temperature: model.temperature,
      suggested: causes.reduce((best, other) => (p[other] > p[best] ? other : best)),
      frequent: tally.frequent,
      probabilities: causes.map((other) => p[other]),
      base: causes.map((other) => model.base[other]),
    };
  });
  return { decisions, learned };
}

function count(tally: Tally, { plant, housing, before, after }: Sorting): void {
  if (before && isCause(before)) tally.add(plant, housing, before, -1);
  if (isCause(after)) tally.add(plant, housing, after, 1);
}

/** Base rates without the report's own earlier cause. */
function withoutItself(tally: Tally, filed: Filed) {
  const plant = plantOf(filed.report).code;
  const housing = housingOf(filed);
  const own = filed.report.sortings.at(-2)?.cause;
  if (own && isCause(own)) tally.add(plant, housing, own, -1);
  const base = tally.base(plant, housing);
  const kept = { group: base.group, plant: base.plant, part: { ...base.part } };
  if (own && isCause(own)) tally.add(plant, housing, own, 1);
  return kept;
}
