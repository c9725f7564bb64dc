import type { DayNumber } from '../calendar.ts';
import type { Rate } from '../group/money.ts';
import { stagePlans } from '../group/stages.ts';
import type { Dice } from '../random.ts';
import type { Fault } from '../scenario/fault.ts';
import { noteText } from '../text/text.ts';
import type { World } from '../world.ts';
import { type Cost, costsOf } from './costs.ts';
import { type Finding, findStage } from './detection.ts';
import { housingLot, reelLot, serialsOf, stationOf } from './marks.ts';
import { type Sorted, sortingsOf } from './sorting.ts';
import { foundDay, type Moment, momentOf } from './timing.ts';
import { type ToolsInvolved, toolsInvolved } from './tools-involved.ts';
import * as traits from './traits.ts';

/** A report as people left it: what they wrote down of a fault. Null: they did not. */
export interface Report {
  fault: Fault;
  finding: Finding;
  day: DayNumber;
  moment: Moment;
  stageCode: string;
  station: string | null;
  knows: { line: boolean; built: boolean; housing: boolean; terminal: boolean; wire: boolean };
  tools: ToolsInvolved;
  cavities: string[];
  reelLot: string | null;
  housingLot: string | null;
  serials: readonly [string, string] | null;
  customer: string | null;
  customerRef: string | null;
  effect: ReturnType<typeof traits.effectOf>;
  quantity: number;
  inspected: number | null;
  lockState: ReturnType<typeof traits.lockStateOf>;
  disposition: traits.DispositionWord;
  note: string | null;
  sortings: Sorted[];
  costs: Cost[];
}

/** Turns faults into reports; null where a fault is found outside the eighteen months. */
export function reportMaker(world: World, rates: readonly Rate[]): (fault: Fault) => Report | null {
  const dice = world.dice('reports');
  return (fault) => {
    const { plant } = fault.run.program;
    const finding = findStage(fault, plant, dice);
    const day = foundDay(plant, fault.run.day, finding, dice);
    return day < world.start || day > world.anchor ? null : reportOf(world, rates, fault, finding, day, dice);
  };
}

function reportOf(
  { anchor, start }: World,
  rates: readonly Rate[],
  fault: Fault,
  finding: Finding,
  day: DayNumber,
  dice: Dice,
): Report {
  const { run, cause } = fault;
  const { plant, line, customer } = run.program;
  const outside = finding.source === 'customer' || finding.source === 'field';
  const age = anchor - day;
  const stages = stagePlans[plant.code].filter(([, , common]) => common === finding.found);
  const [stageCode] = dice.pick(stages);
  const quantity = traits.quantityOf(finding, dice);
  const cavities = traits.cavitiesOf(fault, quantity, dice);
  const disposition = traits.dispositionOf(finding, age, dice);
  const lot = reelLot(run, anchor);
  const seen = { cause, outside, cavity: cavities[0], lot };
  const moment = momentOf(plant, day, finding, dice);
  const some = <Value>(chance: number, value: Value): Value | null => (dice.chance(chance) ? value : null);
  return {
    fault,
    finding,
    day,
    moment,
    stageCode,
    station: outside ? null : some(0.85, stationOf(plant, stageCode, line, dice.whole(1, 4))),
    knows: {
      line: dice.chance(outside ? 0.8 : 0.98),
      built: dice.chance(outside ? 0.85 : 0.9),
      housing: dice.chance(0.985),
      terminal: dice.chance(0.97),
      wire: dice.chance(0.7),
    },
    tools: toolsInvolved(fault, finding, anchor, dice),
    cavities,
    reelLot: some(cause === 'component' ? 0.92 : 0.72, lot),
    housingLot: some(0.6, housingLot(run)),
    serials: fault.serials ?? some(0.7, serialsOf(run, quantity, dice.whole(0, 8999))),
    customer: outside ? customer : null,
    customerRef: finding.source === 'customer' ? some(0.9, `${customer}-${dice.whole(10_000, 99_999)}`) : null,
    effect: traits.effectOf(fault, dice),
    quantity,
    inspected: traits.inspectedOf(quantity, run.program.cavities.length, finding, dice),
    lockState: traits.lockStateOf(fault, finding, dice),
    disposition,
    note: some(outside ? 0.8 : 0.42, noteText(plant.language, seen, dice)),
    sortings: sortingsOf(fault, finding, { plant, day, anchor, moment }, dice),
    costs: costsOf({ plant, start, day, age, finding, disposition, quantity, customer, rates }, dice),
  };
}
