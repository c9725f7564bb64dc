import { periodDays } from '#analysis/calendar/period.ts';
import { gateEffectiveness } from '#analysis/escapes/gate-effectiveness.ts';
import { notComputable } from '#analysis/estimate.ts';
import { type GateValue, gateValues } from '#analysis/gates/gate-value.ts';
import { maturedEffectiveness } from '#analysis/gates/matured-effectiveness.ts';
import type { EscapeCell } from '#api/features/analyses/analyses.service.ts';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import type { Gate, GateMoney, Gates } from '#contracts/gates.ts';
import { type Stage, stageNumber, stageOf, stages } from '#contracts/taxonomy.ts';
import type { FieldOrigin } from './gates.queries.ts';
import { costByStage } from './stage-costs.ts';

const daysAYear = 365.25;
/** Probability at which one gate is called the best. */
const sure = 0.95;
const fieldAt = stages.length - 1;

function matrixOf(cells: readonly EscapeCell[]): number[][] {
  const counts = stages.map(() => stages.map(() => 0));
  for (const { origin, found, reports } of cells) if (origin !== null) counts[origin - 1]![found - 1]! += reports;
  return counts;
}

/** The same matrix with the field faults of what was built in the period in place of those found in it. */
const builtMatrix = (counts: readonly (readonly number[])[], field: readonly FieldOrigin[]): number[][] =>
  counts.map((row, origin) =>
    row.map((reports, found) =>
      found === fieldAt ? field.reduce((sum, one) => sum + (one.origin === origin + 1 ? one.built : 0), 0) : reports,
    ),
  );

const upTo = (gate: number, rows: readonly (readonly number[])[], found: (place: number) => boolean): number =>
  rows
    .slice(0, gate)
    .reduce((sum, row) => sum + row.reduce((all, count, place) => all + (found(place) ? count : 0), 0), 0);

/** Smallest set of gates that holds the best one with 95 % probability. */
function bestGates(values: readonly GateValue[]): Stage[] {
  const chosen: Stage[] = [];
  let probability = 0;
  for (const { gate, probabilityBest } of values.toSorted((a, b) => b.probabilityBest - a.probabilityBest)) {
    if (probability >= sure || probabilityBest === 0) break;
    chosen.push(stageOf(gate));
    probability += probabilityBest;
  }
  return chosen;
}

export function presentGates(
  { head, period, plants, seed }: Pick<Asked, 'head' | 'period' | 'plants' | 'seed'>,
  counted: {
    cells: readonly EscapeCell[];
    field: readonly FieldOrigin[];
    found: Gates['found'];
    maturity: Gates['maturity'];
  },
  options: { money: GateMoney; pointCost: ReadonlyMap<Stage, number> },
): Gates {
  const { cells, field, found, maturity } = counted;
  const raw = matrixOf(cells);
  const { reported } = maturity;
  const counts = reported === null ? raw : builtMatrix(raw, field);
  const own = new Set(plants.flatMap((plant) => plant.stages));
  const exists = (place: number) => own.has(place + 1) || place === fieldAt || raw.some((row) => row[place]! > 0);
  const gates = stages.slice(0, -1).flatMap((_, place) => (exists(place) ? [place] : []));
  const matrix = { counts, fieldMaturity: reported ?? 1, gates };
  const costOfOnePoint = stages.slice(0, -1).map((stage) => options.pointCost.get(stage) ?? null);
  const values = gateValues(
    {
      ...matrix,
      costByStage: costByStage(found, options.money, exists),
      years: periodDays(period) / daysAYear,
      costOfOnePoint,
    },
    { seed },
  );
  const plain = gateEffectiveness(raw).gates;
  const matured = maturedEffectiveness(matrix, { seed });
  const candidates = bestGates(values.gates);
  const known = raw.reduce((sum, row) => sum + row.reduce((all, count) => all + count, 0), 0);
  return {
    ...head,
    money: options.money,
    reports: known,
    withoutOrigin: cells.reduce((sum, cell) => sum + (cell.origin === null ? cell.reports : 0), 0),
    gates: gates.map((place): Gate => {
      const { found: foundHere, present, effectiveness } = plain[place]!;
      const value = values.gates[place]!;
      return {
        stage: stageOf(place + 1),
        foundHere,
        foundLater: present - foundHere,
        effectiveness,
        foundInsideLater: upTo(place + 1, raw, (at) => at > place && at < fieldAt),
        fieldBuilt: upTo(place + 1, builtMatrix(raw, field), (at) => at === fieldAt),
        fieldToCome: reported === null ? null : matured[place]!.toCome,
        matured: reported === null ? notComputable(maturity.reason ?? 'too_few') : matured[place]!.effectiveness,
        faultsPerYear: value.faultsPerYear,
        onePoint: value.valueOfOnePoint,
        pointCostMinor: costOfOnePoint[place]!,
        perMoneySpent: value.perMoneySpent,
        probabilityBest: value.probabilityBest,
      };
    }),
    made: values.stages
      .filter(({ stage }) => exists(stage - 1))
      .map(({ stage, costOfOneFault, reachesField }) => ({ stage: stageOf(stage), costOfOneFault, reachesField })),
    found: found.filter(({ stage }) => exists(stageNumber(stage) - 1)),
    maturity,
    next: {
      stage: candidates.length === 1 ? candidates[0]! : null,
      candidates,
      perMoney: gates.every((place) => costOfOnePoint[place] !== null && costOfOnePoint[place]! > 0),
    },
  };
}
