import type { WorkingCalendar } from '#analysis/calendar/working-time.ts';
import { isoDay, weekday } from './calendar.ts';
import type { PlantPlan } from './group/plants.ts';
import { dayVolume } from './group/work-days.ts';
import type { World } from './world.ts';

export interface DemoCalendar {
  working: WorkingCalendar;
}

/** Office hours, not the shifts of the lines: Monday to Friday. */
const begins: Record<string, string> = { LEJ: '07:30', POZ: '07:00', QRO: '08:00', SUZ: '08:30', TOL: '08:00' };
const ends: Record<string, string> = { LEJ: '16:00', POZ: '15:30', QRO: '17:00', SUZ: '17:30', TOL: '16:30' };
const ahead = 120;

/** A plant's working time over the demo and some months after it; closed where nothing is built. */
export function demoCalendar(plant: PlantPlan, { start, anchor }: World): DemoCalendar {
  const days = Array.from({ length: anchor + ahead - start }, (_, index) => start + index);
  const holidays = days.filter((day) => weekday(day) <= 5 && dayVolume(plant, day) === 0).map(isoDay);
  const shift = [begins[plant.code]!, ends[plant.code]!] as const;
  return {
    working: {
      zone: plant.zone,
      hours: [1, 2, 3, 4, 5, 6, 7].map((it) => (it <= 5 ? [shift] : [])),
      holidays: new Set(holidays),
    },
  };
}
