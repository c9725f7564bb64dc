import { type DayNumber, instantOf, isoDay } from '../calendar.ts';
import { type PlantPlan, plants } from '../group/plants.ts';
import { overdueTools, type ToolPlan, toolsOf } from '../group/tools.ts';
import type { Dice } from '../random.ts';
import { wornApplicator } from '../scenario/worn-applicator.ts';
import type { World } from '../world.ts';
import type { Row, Table } from './row.ts';

/** Cycles a tool has run since its last service, as a share of its service interval; above 1: overdue. */
function wearOf(plant: PlantPlan, { code }: ToolPlan, dice: Dice): number {
  if (plant.code === wornApplicator.plant && code === wornApplicator.tool) return 1.62;
  const share = 0.05 + 0.88 * dice.next();
  return overdueTools.includes(`${plant.code} ${code}`) ? 1.03 + 0.3 * share : share;
}

function toolRow({ id, anchor }: World, plant: PlantPlan, tool: ToolPlan, dice: Dice): Row {
  const interval = tool.serviceInterval!;
  const wear = wearOf(plant, tool, dice);
  const services = dice.whole(1, 9);
  const isWorn = plant.code === wornApplicator.plant && tool.code === wornApplicator.tool;
  const until: DayNumber = isWorn ? anchor - wornApplicator.replaced : anchor;
  return {
    id: id(`tool ${plant.code} ${tool.code}`),
    plant_id: id(`plant ${plant.code}`),
    ...{ code: tool.code, name: tool.name, kind: tool.kind, type: tool.type },
    cycle_count: Math.round(interval * (services + wear)),
    service_interval: interval,
    serviced_at_count: interval * services,
    serviced_on: isoDay(until - Math.round(wear * 90)),
    retired_at: isWorn ? new Date(instantOf(plant.zone, until, 14 * 60)).toISOString() : null,
    version: services,
  };
}

export function toolTable(world: World): Table {
  const dice = world.dice('tools');
  return {
    name: 'tool',
    rows: plants.flatMap((plant) => toolsOf(plant.code).map((tool) => toolRow(world, plant, tool, dice))),
  };
}
