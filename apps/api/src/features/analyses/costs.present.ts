import type { Costs } from '#contracts/analyses.ts';
import { costCategories, stageOf } from '#contracts/taxonomy.ts';
import type { Asked } from './asked.service.ts';
import { escalation } from './costs.escalation.ts';
import type { CategoryCosts, FoundCosts } from './costs.queries.ts';
import { countsOf } from './counts.ts';
import { shownParts } from './money.rules.ts';
import { withoutCostIn } from './sums.ts';

const reasons = ['no_cause', 'no_origin', 'no_standard_cost', 'no_cost'] as const;

export function presentCosts(
  { head, money, seed }: Pick<Asked, 'head' | 'money' | 'seed'>,
  rows: readonly FoundCosts[],
  categories: readonly CategoryCosts[],
): Costs {
  const stages = [...Map.groupBy(rows, ({ found }) => found)].sort(([a], [b]) => a - b);
  const { parts, total } = countsOf(
    stages.map(([, found]) => found),
    money,
  );
  const escalated = escalation(rows, { money, seed });
  const exactly = (of: (row: FoundCosts) => number) =>
    money.exact(rows.map((row) => ({ plantId: row.plant_id, minor: of(row) })));
  const category = (basis: 'booked' | 'estimate') =>
    costCategories.map((name) =>
      money.exact(
        categories.filter((row) => row.category === name).map((row) => ({ plantId: row.plant_id, minor: row[basis] })),
      ),
    );
  const booked = shownParts(category('booked')).parts;
  const estimated = shownParts([...category('estimate'), exactly((row) => row.standard)]).parts;
  return {
    ...head,
    bookedMinor: total.bookedMinor,
    estimateMinor: total.estimateMinor,
    withoutCost: withoutCostIn(rows),
    avoidable: {
      minor: shownParts([exactly((row) => row.avoidable)]).total,
      reports: rows.reduce((sum, row) => sum + row.late, 0),
      notComputable: reasons.map((reason) => ({
        reason,
        reports: rows.reduce((sum, row) => sum + row[reason], 0),
      })),
    },
    byFound: stages.map(([stage], place) => ({ ...parts[place]!, stage: stageOf(stage), ...escalated.of(stage) })),
    baseStage: escalated.baseStage,
    byCategory: costCategories
      .map((name, place) => ({ category: name, bookedMinor: booked[place]!, estimatedMinor: estimated[place]! }))
      .filter(({ bookedMinor, estimatedMinor }) => bookedMinor !== 0 || estimatedMinor !== 0),
    standardMinor: estimated.at(-1)!,
  };
}
