import type { DayNumber } from './calendar.ts';
import { plants } from './group/plants.ts';
import { dayVolume } from './group/work-days.ts';
import type { Program, Run, World } from './world.ts';

/** Terminals that a line of an average plant inserts on a full day. */
const lineTerminals = 22_200;
/** Faults built this long before the period may still come back from the field in it. */
const daysBefore = 540;

/** Every program of every working day, in the order of days; from before the period, so that early field failures exist. */
export function* runs(world: World): Generator<Run> {
  const dice = world.dice('production');
  for (let day = world.start - daysBefore; day <= world.anchor; day += 1)
    for (const plant of plants) {
      const volume = dayVolume(plant, day);
      if (volume === 0) continue;
      for (const program of world.programs.filter((it) => it.plant === plant)) {
        const planned = lineTerminals * plant.volume * volume * program.share;
        if (program.slot > 1 && dice.chance(0.25)) continue;
        yield runOf(program, day, dice.logNormal(planned, 0.12));
      }
    }
}

function runOf(program: Program, day: DayNumber, planned: number): Run {
  const units = Math.max(1, Math.round(planned / program.cavities.length));
  return { program, day, units, terminals: units * program.cavities.length };
}
