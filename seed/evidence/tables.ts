import { causes } from '#analysis/suggestion/causes.ts';
import { findingCatalogue } from '#contracts/finding-catalogue.ts';
import { people } from '../group/people.ts';
import { engineerOf, plantOf } from '../tables/reports.ts';
import { instant, type Row, type Table } from '../tables/row.ts';
import { reasonText } from '../text/text.ts';
import type { World } from '../world.ts';
import type { Case } from './cases.ts';
import type { Learned } from './learned.ts';
import { opinionRows } from './opinions.ts';
import type { Replayed } from './replay.ts';

function findingRows({ id }: World, { filed, taken, decision }: Case): Row[] {
  const plant = plantOf(filed.report).code;
  const inspector = people.find((it) => it.plant === plant && it.role === 'inspector')!;
  const { reportedAt } = filed.report.moment;
  const until = decision?.at ?? reportedAt + 3_600_000;
  return taken.map(({ code, answer, value, limit }, place) => {
    const at = reportedAt + ((until - reportedAt) * (place + 1)) / (taken.length + 1);
    return {
      id: id(`finding ${filed.id} ${code}`, Math.round(at)),
      plant_id: id(`plant ${plant}`),
      failure_id: filed.id,
      ...{ code, answer, value, limit_value: limit },
      unit: value === null ? null : findingCatalogue[code].unit!,
      note: null,
      import_id: null,
      taken_by: inspector.name,
      taken_at: instant(at),
    };
  });
}

const array = (values: readonly number[]): string => `{${values.join(',')}}`;

function confirmationRow({ id }: World, reason: (plant: Replayed) => string, it: Replayed): Row {
  const { filed, taken, decision } = it.case;
  const { program } = filed.report.fault.run;
  const engineer = engineerOf(program.plant.code);
  return {
    id: id(`confirmation ${filed.id}`, it.at),
    plant_id: id(`plant ${program.plant.code}`),
    failure_id: filed.id,
    housing_id: filed.report.knows.housing ? id(`housing ${program.housing.code}`) : null,
    at: instant(it.at),
    person_id: id(`person ${engineer.email}`),
    actor: engineer.name,
    ...{ cause: it.cause, suggested: it.suggested, frequent: it.frequent },
    reason: decision!.reason ?? (it.cause === it.suggested ? null : (decision!.proof ?? reason(it))),
    answers: JSON.stringify(Object.fromEntries(it.answers)),
    taken: taken.length,
    probabilities: array(it.probabilities),
    base: array(it.base),
    temperature: it.temperature,
    model_version: it.version,
    superseded_at: null,
  };
}

function learnedTables({ id }: World, learned: Learned): Table[] {
  const plantId = (code: string) => id(`plant ${code}`);
  const answers = [...learned.answers].flatMap(([plant, seen]) =>
    [...seen].flatMap(([code, { yes, no }]) =>
      causes
        .filter((cause) => yes[cause] + no[cause] > 0)
        .map((cause): Row => ({ plant_id: plantId(plant), code, cause, yes: yes[cause], no: no[cause] })),
    ),
  );
  const pairs = [...learned.pairs.values()].map(({ plant, first, second, cause, counts }): Row => {
    const [yes_yes, yes_no, no_yes, no_no] = counts;
    return { plant_id: plantId(plant), first, second, cause, yes_yes, yes_no, no_yes, no_no };
  });
  const versions = [...learned.cases].map(([plant, cases]) => ({ plant_id: plantId(plant), version: cases, cases }));
  return [
    { name: 'learned_version', rows: versions },
    { name: 'learned_answer', rows: answers },
    { name: 'learned_pair', rows: pairs },
  ];
}

/** Findings, decisions, what they taught and second opinions, as the service would have written them. */
export function evidenceTables(
  world: World,
  cases: readonly Case[],
  decisions: readonly Replayed[],
  learned: Learned,
): Table[] {
  const dice = world.dice('reasons');
  const reason = ({ case: { filed } }: Replayed) => reasonText(plantOf(filed.report).language, dice);
  return [
    { name: 'finding', rows: cases.flatMap((it) => findingRows(world, it)) },
    { name: 'confirmation', rows: decisions.map((it) => confirmationRow(world, reason, it)) },
    ...learnedTables(world, learned),
    { name: 'opinion', rows: opinionRows(world, decisions) },
  ];
}
