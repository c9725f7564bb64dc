/** What one fault costs where it is found: means over the reports that have a cost, booked and estimated apart. */
import type { EscapeCell } from '#api/features/analyses/analyses.service.ts';
import type { Converter } from '#api/features/analyses/money.rules.ts';
import type { GateMoney, Gates } from '#contracts/gates.ts';
import { stageOf, stages } from '#contracts/taxonomy.ts';
import type { StageStandard } from './gates.queries.ts';

type StageCost = Gates['found'][number];

const added = <Row>(rows: readonly Row[], of: (row: Row) => number) => rows.reduce((sum, row) => sum + of(row), 0);

function knownCosts(cells: readonly EscapeCell[], standards: readonly StageStandard[], money: Converter): StageCost[] {
  return stages.map((_, place) => {
    const stage = stageOf(place + 1);
    const found = cells.filter((cell) => cell.found === place + 1);
    const reports = added(found, (cell) => cell.reports - cell.without_cost);
    if (reports > 0)
      return {
        stage,
        reports,
        bookedMinor: added(found, (cell) => cell.booked * money.factor(cell.plant_id)) / reports,
        estimateMinor: added(found, (cell) => cell.estimate * money.factor(cell.plant_id)) / reports,
        basis: 'reports',
      };
    const standing = standards.filter((row) => row.stage === place + 1);
    const estimate = standing.length
      ? added(standing, (row) => row.minor * money.factor(row.plant_id)) / standing.length
      : null;
    return {
      stage,
      reports: 0,
      bookedMinor: estimate === null ? null : 0,
      estimateMinor: estimate,
      basis: estimate === null ? 'none' : 'standard',
    };
  });
}

/** A gate that found nothing and has no standard cost takes that of the nearest gate; the field never does. */
export function stageCosts(...known: Parameters<typeof knownCosts>): StageCost[] {
  const costs = knownCosts(...known);
  const inside = costs.slice(0, -1);
  return costs.map((cost, place) => {
    if (cost.basis !== 'none' || cost.stage === 'field') return cost;
    const near = inside.slice(0, place).findLast(hasCost) ?? inside.slice(place).find(hasCost);
    return near ? { ...near, stage: cost.stage, reports: 0, basis: 'neighbour' } : cost;
  });
}

const hasCost = ({ basis }: StageCost) => basis !== 'none';

/** The cost that the chain of gates reckons with; 0 where no gate is, for nothing is found there. */
export const costByStage = (costs: readonly StageCost[], money: GateMoney, exists: (place: number) => boolean) =>
  costs.map(({ bookedMinor, estimateMinor }, place) => {
    if (!exists(place)) return 0;
    if (bookedMinor === null || estimateMinor === null) return null;
    return money === 'booked' ? bookedMinor : bookedMinor + estimateMinor;
  });
