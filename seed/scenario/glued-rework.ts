import { type DayNumber, isoDay } from '../calendar.ts';
import { isAt, type Truth } from './fault.ts';

/** One batch was reworked with glue on the terminals; it fails at the product test, at customers and for months in the field. */
export const gluedRework = {
  key: 'glued-rework',
  plant: 'TOL',
  line: 'L1',
  housings: ['HX-11', 'HX-10'],
  /** days before the anchor on which the batch began, and how many days it lasted */
  began: 262,
  days: 12,
  ppm: 1500,
} as const;

/** Serial of a harness, such as `TOL-260311-0042`. */
export const serial = (plant: string, day: DayNumber, number: number): string =>
  `${plant}-${isoDay(day).slice(2).replaceAll('-', '')}-${String(number).padStart(4, '0')}`;

export function gluedReworkTruth(anchor: DayNumber): Truth {
  const { key, plant, line, housings, began, days, ppm } = gluedRework;
  const from = anchor - began;
  return {
    key,
    excess: (run) =>
      isAt(run, plant, [line], from, from + days) && housings.some((it) => it === run.program.housing.code) ? ppm : 0,
    shape: ({ day }, dice) => {
      const number = dice.whole(1, 900);
      return {
        cause: 'adhesive',
        subCause: 'glue_in_rework',
        origin: 7,
        detection: { 8: 0.35 },
        fieldShare: 0.6,
        serials: [serial(plant, day, number), serial(plant, day, number)],
        effects: { intermittent: 5, open_circuit: 2, high_resistance: 3, mating_blocked: 2 },
      };
    },
  };
}
