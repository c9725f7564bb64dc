import { type DayNumber, instantOf } from '../calendar.ts';
import type { PlantPlan } from '../group/plants.ts';
import { isWorkDay, workDaysLater } from '../group/work-days.ts';
import type { Dice } from '../random.ts';
import type { Finding } from './detection.ts';

/** The day a fault is found: at once inside, weeks later on the customer's line, months later in the field. */
export function foundDay(plant: PlantPlan, built: DayNumber, { found, source }: Finding, dice: Dice): DayNumber {
  if (source === 'field') return built + Math.round(14 + dice.weibull(1.5, 210));
  if (source === 'customer') return weekdayAfter(built + Math.round(8 + dice.gamma(2, 26)));
  if (found === 9) return workDaysLater(plant, built, dice.whole(2, 9));
  if (found >= 7) return workDaysLater(plant, built, dice.whole(0, 3));
  return workDaysLater(plant, built, dice.chance(0.15) ? 1 : 0);
}

/** Customers work Monday to Friday. */
const weekdayAfter = (day: DayNumber): DayNumber => {
  const past = (day + 3) % 7;
  return past > 4 ? day + 7 - past : day;
};

export interface Moment {
  shift: string | null;
  foundAt: number;
  reportedAt: number;
}

/** When on the day it was found and reported. Inside the plant that is in one of its shifts; outside in office hours. */
export function momentOf(plant: PlantPlan, day: DayNumber, { source }: Finding, dice: Dice): Moment {
  const outside = source === 'customer' || source === 'field';
  const number = outside || !isWorkDay(plant, day) ? 0 : Number(dice.weighted({ 0: 48, 1: 38, 2: 14 }));
  const from = outside ? 8 * 60 : [6 * 60, 14 * 60, 22 * 60][number]!;
  const length = outside ? 8 * 60 : number === 2 ? 100 : 8 * 60 - 1;
  const minute = from + dice.whole(0, length);
  const foundAt = instantOf(plant.zone, day, minute) + dice.whole(0, 59_999);
  const wait = Math.min(outside ? dice.exponential(40) : dice.exponential(9), 23 * 60 + 58 - minute);
  return {
    shift: outside ? null : plant.shifts[number]!,
    foundAt,
    reportedAt: foundAt + Math.round(Math.max(1, wait) * 60_000),
  };
}

/** An instant on a working day at least `days` later, in office hours; null when that lies after the anchor. */
export function laterInOffice(
  plant: PlantPlan,
  day: DayNumber,
  days: number,
  anchor: DayNumber,
  dice: Dice,
): { day: DayNumber; at: number } | null {
  const then = workDaysLater(plant, day + Math.max(1, Math.round(days)), 0);
  const at = instantOf(plant.zone, then, dice.whole(8 * 60, 16 * 60)) + dice.whole(0, 59_999);
  return then > anchor ? null : { day: then, at };
}
