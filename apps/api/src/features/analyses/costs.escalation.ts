import { escalationFactors, type LogCosts } from '#analysis/costs/escalation-factors.ts';
import { ruleOfTen } from '#analysis/costs/rule-of-ten.ts';
import type { Costs } from '#contracts/analyses.ts';
import { type Stage, stageOf } from '#contracts/taxonomy.ts';
import type { FoundCosts } from './costs.queries.ts';
import type { Converter } from './money.rules.ts';

/** A base stage with fewer priced reports would make every factor a guess. */
const enough = 10;

type Escalation = Pick<Costs['byFound'][number], 'perTerminal' | 'factor' | 'ruleOfTen'>;

/** Sums of logarithms in the currency of the answer: each logarithm is raised by that of the plant's exchange factor. */
function logCosts(rows: readonly FoundCosts[], money: Converter): LogCosts[] {
  const byStage = new Map<number, LogCosts>();
  for (const row of rows) {
    const sum = byStage.get(row.found) ?? { stage: row.found, count: 0, sumLog: 0, sumLogSquares: 0 };
    byStage.set(row.found, sum);
    const factor = money.factor(row.plant_id);
    if (factor === 0) continue;
    const raise = Math.log(factor);
    sum.count += row.priced;
    sum.sumLog += row.sum_log + row.priced * raise;
    sum.sumLogSquares += row.sum_log_squares + 2 * raise * row.sum_log + row.priced * raise ** 2;
  }
  return [...byStage.values()].sort((a, b) => a.stage - b.stage);
}

/** The earliest stage with enough priced reports; else the one with the most. */
function baseOf(stages: readonly LogCosts[]): LogCosts | undefined {
  const [most] = stages.filter(({ count }) => count > 0).sort((a, b) => b.count - a.count);
  return stages.find(({ count }) => count >= enough) ?? most;
}

/** How cost per terminal grows from stage to stage. */
export function escalation(
  rows: readonly FoundCosts[],
  { money, seed }: { money: Converter; seed: number },
): { baseStage: Stage | null; of(stage: number): Escalation } {
  const costs = logCosts(rows, money);
  const base = baseOf(costs);
  const factors = escalationFactors(costs, { baseStage: base?.stage ?? 0, seed });
  return {
    baseStage: base ? stageOf(base.stage) : null,
    of(stage) {
      const { count, sumLog } = costs.find((cost) => cost.stage === stage)!;
      return {
        perTerminal: count === 0 ? null : { bookedMinor: Math.exp(sumLog / count), reports: count },
        factor: factors.find((found) => found.stage === stage)!.factor,
        ruleOfTen: ruleOfTen(base?.stage ?? stage, stage).factor,
      };
    },
  };
}
