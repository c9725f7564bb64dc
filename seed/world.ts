import { addMonths, type DayNumber, isoDay } from './calendar.ts';
import { customers } from './group/customers.ts';
import { type LineCode, lineCodes, linePrograms, programShares } from './group/lines.ts';
import { cavitiesOf, type HousingPlan, housings, type TerminalPlan, terminals, wires } from './group/parts.ts';
import { type PlantPlan, plants } from './group/plants.ts';
import { applicatorOf, fixtureOf } from './group/tools.ts';
import { idMaker, type MakeId } from './ids.ts';
import { Dice } from './random.ts';

/** What one line builds for one customer: the unit of production. */
export interface Program {
  plant: PlantPlan;
  line: LineCode;
  /** 0: the most built of its line */
  slot: number;
  housing: HousingPlan;
  cavities: readonly string[];
  terminal: TerminalPlan;
  wire: string;
  customer: string;
  applicator: string;
  fixture: string;
  share: number;
  /** background failures against the group's average */
  proneness: number;
}
/** One day of a program. */
export interface Run {
  program: Program;
  day: DayNumber;
  units: number;
  terminals: number;
}
export interface World {
  seed: number;
  /** first day of the eighteen months */
  start: DayNumber;
  /** last day */
  anchor: DayNumber;
  programs: readonly Program[];
  id: MakeId;
  dice(stream: string): Dice;
}

export function makeWorld(seed: number, anchor: DayNumber): World {
  const start = addMonths(anchor, -18) + 1;
  const dice = (stream: string) => new Dice(seed, stream);
  const id = idMaker(seed, Date.parse(`${isoDay(start)}T00:00:00Z`));
  const programDice = dice('programs');
  const programs = plants.flatMap((plant) => lineCodes.flatMap((line) => programsOf(plant, line, programDice)));
  return { seed, start, anchor, programs: levelled(programs), id, dice };
}

/** Proneness against its mean by volume, so that every seed gives about as many failures. */
function levelled(programs: readonly Program[]): Program[] {
  const volumeOf = ({ plant, share }: Program) => plant.volume * share;
  const volume = programs.reduce((sum, it) => sum + volumeOf(it), 0);
  const mean = programs.reduce((sum, it) => sum + volumeOf(it) * it.proneness, 0) / volume;
  return programs.map((it) => ({ ...it, proneness: it.proneness / mean }));
}

function programsOf(plant: PlantPlan, line: LineCode, dice: Dice): Program[] {
  const buyers = customers.filter((it) => it.plants.includes(plant.code));
  return linePrograms[plant.code][line].split(' ').map((pair, slot) => {
    const [housing, terminal] = partsOf(pair);
    const fitting = wires.filter(([, , mm2]) => mm2 >= terminal.wireMm2[0] && mm2 <= terminal.wireMm2[1]);
    return {
      plant,
      line,
      slot,
      housing,
      cavities: cavitiesOf(housing),
      terminal,
      wire: dice.pick(fitting)[0],
      customer: buyers[(Number(line[1]) + slot + 2) % buyers.length]!.code,
      applicator: applicatorOf(line, terminal.size),
      fixture: fixtureOf(line),
      share: programShares[slot]!,
      proneness: dice.logNormal(1, 0.4),
    };
  });
}

function partsOf(pair: string): [HousingPlan, TerminalPlan] {
  const [housingCode, terminalCode] = pair.split('/');
  const housing = housings.find(({ code }) => code === housingCode);
  const terminal = terminals.find(({ code }) => code === terminalCode);
  if (!housing || !terminal || housing.size !== terminal.size || housing.style !== terminal.style)
    throw new Error(`${pair} do not fit together`);
  return [housing, terminal];
}
