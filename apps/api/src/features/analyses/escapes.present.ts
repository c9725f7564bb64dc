import { gateEffectiveness } from '#analysis/escapes/gate-effectiveness.ts';
import { estimate, notComputable } from '#analysis/estimate.ts';
import { binomialInterval } from '#analysis/rates/binomial-interval.ts';
import type { Escapes } from '#contracts/analyses.ts';
import { stageOf, stages } from '#contracts/taxonomy.ts';
import type { Asked } from './asked.service.ts';
import { countsOf } from './counts.ts';
import type { CellSums } from './escapes.queries.ts';
import { reportsIn } from './sums.ts';

const reportMatrix = (rows: readonly CellSums[]): number[][] => {
  const counts = stages.map(() => stages.map(() => 0));
  for (const { origin, found, reports } of rows) if (origin !== null) counts[origin - 1]![found - 1]! += reports;
  return counts;
};

export function presentEscapes(
  { head, money, plants }: Pick<Asked, 'head' | 'money' | 'plants'>,
  rows: readonly CellSums[],
): Escapes {
  const cells = [...Map.groupBy(rows, ({ origin, found }) => `${origin} ${found}`).values()].sort(
    ([a], [b]) => (a!.origin ?? 11) - (b!.origin ?? 11) || a!.found - b!.found,
  );
  const { parts, total } = countsOf(cells, money);
  const known = rows.filter(({ origin }) => origin !== null);
  const passed = known.filter(({ passed_two }) => passed_two);
  const [passedTwo, withoutOrigin] = [passed, rows.filter(({ origin }) => origin === null)].map(
    (part) => countsOf([part], money).total,
  );
  return {
    ...head,
    cells: cells.map(([cell], place) => ({
      origin: cell!.origin === null ? null : stageOf(cell!.origin),
      found: stageOf(cell!.found),
      ...parts[place]!,
    })),
    total,
    withoutOrigin: withoutOrigin!,
    gates: gatesOf(known, new Set(plants.flatMap((plant) => plant.stages))),
    passedTwo: { ...passedTwo!, share: shareOf(reportsIn(passed), reportsIn(known)) },
  };
}

const shareOf = (part: number, whole: number) =>
  whole === 0 ? notComputable('no_reports') : estimate(part / whole, binomialInterval(part, whole));

/** The stages that the plants have, or that found something; the field is no gate. */
function gatesOf(known: readonly CellSums[], existing: ReadonlySet<number>): Escapes['gates'] {
  const { gates } = gateEffectiveness(reportMatrix(known));
  return gates
    .filter(({ gate, found }) => existing.has(gate) || found > 0)
    .map(({ gate, found, present, effectiveness }) => ({
      stage: stageOf(gate),
      foundHere: found,
      foundLater: present - found,
      effectiveness,
    }));
}
