import { type DayNumber, easterSunday, isLunarNewYear, isoDay, weekday, yearOf } from '../calendar.ts';
import type { PlantCode, PlantPlan } from './plants.ts';

/** Days without production that return every year: `MM-DD`, or `MM-DD/MM-DD` for a span. */
const closed: Record<PlantCode, readonly string[]> = {
  LEJ: ['12-24/12-31', '01-01', '05-01', '10-03', '10-31', '07-28/08-08'],
  POZ: ['12-24/12-31', '01-01', '01-06', '05-01', '05-03', '08-15', '11-01', '11-11', '08-04/08-10'],
  QRO: ['12-23/12-31', '01-01', '02-05', '03-21', '05-01', '09-16', '11-02', '11-20'],
  SUZ: ['01-01', '05-01/05-03', '10-01/10-07'],
  TOL: ['12-24/12-31', '01-01', '05-26', '07-04/07-10', '09-01', '11-27/11-28'],
};
/** Days from Easter Sunday. */
const aroundEaster: Record<PlantCode, readonly number[]> = {
  LEJ: [-2, 1, 39, 50],
  POZ: [1, 60],
  QRO: [-4, -3, -2, -1],
  SUZ: [],
  TOL: [-2],
};

function isClosed(plant: PlantPlan, day: DayNumber): boolean {
  const monthDay = isoDay(day).slice(5);
  const inSpan = closed[plant.code].some((span) => {
    const [first = '', last = first] = span.split('/');
    return first <= monthDay && monthDay <= last;
  });
  if (inSpan) return true;
  if (aroundEaster[plant.code].includes(day - easterSunday(yearOf(day)))) return true;
  return plant.code === 'SUZ' && isLunarNewYear(day);
}

/** Share of a full day's production: weekends, holidays, and a yearly wave with a dip in summer and before year's end. */
export function dayVolume(plant: PlantPlan, day: DayNumber): number {
  const weekdayShare = [1, 1, 1, 1, 0.92, plant.saturday, 0][weekday(day) - 1]!;
  if (weekdayShare === 0 || isClosed(plant, day)) return 0;
  const yearShare = (day % 365.25) / 365.25;
  return (
    weekdayShare * (1 + 0.09 * Math.cos(2 * Math.PI * (yearShare - 0.3)) + 0.04 * Math.cos(4 * Math.PI * yearShare))
  );
}

const cache = new Map<string, boolean>();
export function isWorkDay(plant: PlantPlan, day: DayNumber): boolean {
  const key = `${plant.code}${day}`;
  const known = cache.get(key);
  if (known !== undefined) return known;
  const works = dayVolume(plant, day) > 0;
  cache.set(key, works);
  return works;
}

/** The day that lies `count` working days after `day`; the next working day when `day` itself is none. */
export function workDaysLater(plant: PlantPlan, day: DayNumber, count: number): DayNumber {
  let at = day;
  while (!isWorkDay(plant, at)) at += 1;
  for (let left = count; left > 0; left -= 1) {
    at += 1;
    while (!isWorkDay(plant, at)) at += 1;
  }
  return at;
}
