import { type DayNumber, isoDay } from '../calendar.ts';
import type { PlantPlan } from '../group/plants.ts';
import { stagePlans } from '../group/stages.ts';
import { hashOf } from '../random.ts';
import { serial } from '../scenario/glued-rework.ts';
import { lowLances, usesBadLot } from '../scenario/low-lances.ts';
import type { Run } from '../world.ts';

const letterOf = (key: string, letters: string) => letters[(hashOf(key) >>> 0) % letters.length]!;
const weekOf = (day: DayNumber, days: number) => Math.floor(day / days);

/** Reel lot of a run: a line uses one reel lot for about five days; suppliers send the same lots to several plants. */
export function reelLot(run: Run, anchor: DayNumber): string {
  if (usesBadLot(run, anchor)) return lowLances.lot;
  const { plant, line, terminal } = run.program;
  const week = weekOf(run.day, 5);
  const letter = letterOf(`${plant.code} ${line} ${terminal.code} ${week}`, 'ABCDE');
  return `R${terminal.code.slice(3, 5)}-${String(week % 10_000).padStart(4, '0')}-${letter}`;
}

/** Housing lot: one mould run serves about a fortnight; the last figure is the mould. */
export function housingLot({ program: { plant, housing }, day }: Run): string {
  const mould = letterOf(`${plant.code} ${housing.code} ${weekOf(day, 14)}`, '1234');
  return `M${housing.code.slice(3)}-${isoDay(day).slice(2, 7).replace('-', '')}-${mould}`;
}

export function serialsOf({ program, day }: Run, quantity: number, first: number): [string, string] {
  const start = 1 + ((first + Number(program.line[1]) * 1000) % 9000);
  return [serial(program.plant.code, day, start), serial(program.plant.code, day, start + quantity - 1)];
}

/** A place at a stage, such as `EP-L3.2`: stage code, line, bench. */
export function stationOf(plant: PlantPlan, stageCode: string, line: string, bench: number): string | null {
  const stage = stagePlans[plant.code].find(([code]) => code === stageCode);
  if (!stage || stage[2] >= 9) return null;
  return stage[2] === 1 ? stageCode : `${stageCode}-${line}.${bench}`;
}
