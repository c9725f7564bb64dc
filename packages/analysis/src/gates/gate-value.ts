import { defaultConfidence, type Estimate, estimate, notComputable } from '../estimate.ts';
import { sampleQuantile } from '../numeric/sample-quantile.ts';
import { drawEffectiveness, gateCounts, type MatrixCounts } from './draw-effectiveness.ts';
import { costOfOneFault, faultPath } from './fault-path.ts';

export type GateValueInput = MatrixCounts & {
  /** cost of one fault found at each stage, field last, in minor units of one currency; null where unknown */
  costByStage: readonly (number | null)[];
  /** time the counts come from */
  years: number;
  /** what one more percentage point of detection costs a year at each gate, minor units; null where nobody has said */
  costOfOnePoint?: readonly (number | null)[];
};

export type StageCost = {
  /** stage number, from 1 */
  stage: number;
  /** expected cost of one fault made here, minor units */
  costOfOneFault: Estimate;
  /** probability that a fault made here reaches the field */
  reachesField: Estimate;
};

export type GateValue = {
  gate: number;
  /** faults that reach this gate in a year, those still to be reported included */
  faultsPerYear: Estimate;
  /** saved in a year by one more percentage point found here, minor units */
  valueOfOnePoint: Estimate;
  /** the same per unit of money spent on it; null where its cost is not known */
  perMoneySpent: Estimate | null;
  /** share of draws in which the next money does most good here (per money spent where all costs are known) */
  probabilityBest: number;
};

/**
 * Expected cost of one fault made at each stage, and the worth of one point of detection at each gate.
 *
 * value(g) = faults reaching g per year × 0.01 × (cost of a fault that passes g - cost of being found at g), costs from the
 * absorbing chain (`faultPath`). Points are the current estimates, intervals from seeded draws of effectiveness and counts; costs are
 * taken as given. Source: absorbing chain, Grinstead and Snell, section 11.2; the marginal value is its derivative.
 *
 * @returns `no_cost` throughout when a cost is missing, `no_reports` without reports
 */
export function gateValues(
  input: GateValueInput,
  options: { seed: number; draws?: number; confidence?: number },
): { stages: StageCost[]; gates: GateValue[] } {
  const { seed, draws = 1000, confidence = defaultConfidence } = options;
  const perGate = gateCounts(input);
  const costs = input.costByStage.filter((cost) => cost !== null);
  const missing = costs.length < input.counts.length ? 'no_cost' : null;
  const nothing = perGate.every(({ found, later }) => found + later === 0) ? 'no_reports' : null;
  const reason = nothing ?? missing;
  if (reason) {
    const none = notComputable(reason);
    return {
      stages: input.counts.map((_, i) => ({ stage: i + 1, costOfOneFault: none, reachesField: none })),
      gates: perGate.map((_, i) => ({
        gate: i + 1,
        faultsPerYear: none,
        valueOfOnePoint: none,
        perMoneySpent: null,
        probabilityBest: 0,
      })),
    };
  }
  const exists = (gate: number): boolean => input.gates?.includes(gate) ?? true;
  const figures = (effectiveness: readonly number[], present: readonly number[]) => {
    const path = faultPath(effectiveness);
    const fault = costOfOneFault(path, costs);
    const faultsPerYear = present.map((count) => count / input.years);
    const value = faultsPerYear.map((rate, gate) =>
      exists(gate) ? rate * 0.01 * (fault[gate + 1]! - costs[gate]!) : 0,
    );
    return { fault, reachesField: [...path.reachesField, 1], faultsPerYear, value };
  };
  const present = perGate.map(({ found, later, toCome }) => found + later + toCome);
  const best = figures(
    perGate.map(({ found }, gate) => (exists(gate) && present[gate]! > 0 ? found / present[gate]! : 0)),
    present,
  );
  const drawn = drawEffectiveness(input, seed, draws).map((draw) => figures(draw.effectiveness, draw.present));
  const tail = (1 - confidence) / 2;
  const withInterval = (value: number, values: number[]): Estimate => {
    const sorted = Float64Array.from(values).sort();
    const low = Math.min(value, sampleQuantile(sorted, tail));
    return estimate(value, { low, high: Math.max(value, sampleQuantile(sorted, 1 - tail)), confidence });
  };
  const pointCosts = input.costOfOnePoint ?? [];
  const known = perGate.every((_, gate) => !exists(gate) || (pointCosts[gate] ?? 0) > 0);
  const worth = (value: number, gate: number): number => (known && exists(gate) ? value / pointCosts[gate]! : value);
  const wins = new Array<number>(perGate.length).fill(0);
  for (const { value } of drawn) {
    const worths = value.map(worth);
    wins[worths.indexOf(Math.max(...worths))]! += 1;
  }
  return {
    stages: input.counts.map((_, i) => ({
      stage: i + 1,
      costOfOneFault: withInterval(
        best.fault[i]!,
        drawn.map(({ fault }) => fault[i]!),
      ),
      reachesField: withInterval(
        best.reachesField[i]!,
        drawn.map((draw) => draw.reachesField[i]!),
      ),
    })),
    gates: perGate.map((_, i) => {
      const valueOfOnePoint = withInterval(
        best.value[i]!,
        drawn.map(({ value }) => value[i]!),
      );
      const cost = pointCosts[i] ?? null;
      return {
        gate: i + 1,
        faultsPerYear: withInterval(
          best.faultsPerYear[i]!,
          drawn.map((draw) => draw.faultsPerYear[i]!),
        ),
        valueOfOnePoint,
        perMoneySpent: cost
          ? withInterval(
              best.value[i]! / cost,
              drawn.map(({ value }) => value[i]! / cost),
            )
          : null,
        probabilityBest: wins[i]! / draws,
      };
    }),
  };
}
