import { toNewtons } from '#analysis/force/units.ts';
import { instantOf, isoDay } from '../calendar.ts';
import type { Dice } from '../random.ts';
import { usesBadLot } from '../scenario/low-lances.ts';
import { applicatorAt, wornApplicator } from '../scenario/worn-applicator.ts';
import type { Run, World } from '../world.ts';
import { instant, type Row } from './row.ts';

const everyDays = 14;
const valuesEach = 5;
/** Pull-out minimum and usual forces as multiples of the terminal's minimum retention force; invented. */
const usual = { retention: 1.36, pull_out: 2.2, pullMinimum: 1.5, spread: 0.055 };
/** What is left of the usual force with the lot's low lances, and with the applicator at the end of its life. */
const left = { lowLance: 0.74, wornOut: 0.58 };

/** The worn applicator crimps looser from week to week. */
function crimpLeft({ program, day }: Run, anchor: number): number {
  const { plant, tool, wears, replaced } = wornApplicator;
  if (program.plant.code !== plant || program.applicator !== tool || day < anchor - wears || day >= anchor - replaced)
    return 1;
  return left.wornOut ** ((day - anchor + wears) / (wears - replaced));
}

function sampleRow({ id, anchor }: World, run: Run, kind: 'retention' | 'pull_out', dice: Dice): Row {
  const { plant, line, housing, terminal, wire } = run.program;
  const tool = applicatorAt(run, anchor);
  const minimum = terminal.minRetentionN;
  const usualN = minimum * usual[kind];
  const share = kind === 'retention' ? (usesBadLot(run, anchor) ? left.lowLance : 1) : crimpLeft(run, anchor);
  const unit = plant.code === 'TOL' ? 'lbf' : 'N';
  const entered = Array.from({ length: valuesEach }, () =>
    (dice.logNormal(usualN * share, usual.spread) / toNewtons(1, unit)).toFixed(1),
  );
  const at = instantOf(plant.zone, run.day, 15 * 60);
  return {
    id: id(`force ${kind} ${plant.code} ${line} ${run.day}`, at),
    plant_id: id(`plant ${plant.code}`),
    kind,
    day: isoDay(run.day),
    terminal_id: id(`terminal ${terminal.code}`),
    tool_id: id(`tool ${plant.code} ${tool}`),
    housing_id: id(`housing ${housing.code}`),
    wire_id: id(`wire ${wire}`),
    unit,
    entered,
    newtons: entered.map((value) => String(toNewtons(Number(value), unit))),
    minimum_n: kind === 'pull_out' ? minimum * usual.pullMinimum : null,
    recorded_at: instant(at),
    recorded_by: `Inspector ${plant.name}`,
  };
}

/** Every second week each line measures five terminals of what it builds most: retention, and pull-out of the crimp. */
export function forceMaker(world: World): (run: Run) => Row[] {
  const dice = world.dice('forces');
  const measured = new Map<string, number>();
  return (run) => {
    const { program, day } = run;
    if (program.slot !== 0 || day < world.start) return [];
    const line = `${program.plant.code} ${program.line}`;
    const fortnight = Math.floor((world.anchor - day) / everyDays);
    if (measured.get(line) === fortnight) return [];
    measured.set(line, fortnight);
    return (['retention', 'pull_out'] as const).map((kind) => sampleRow(world, run, kind, dice));
  };
}
