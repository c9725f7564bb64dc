import type { DayNumber } from '../calendar.ts';
import { isAt, type Truth } from './fault.ts';

/**
 * One harness drawing shows no strain relief: wires pull on the outer rows, found late, mostly at one customer. Moving the tie
 * was tried and changed nothing, because the drawing stayed as it was.
 */
export const noStrainRelief = {
  key: 'no-strain-relief',
  plant: 'LEJ',
  line: 'L5',
  housing: 'HX-13',
  customer: 'FHG',
  outerRows: ['A', 'C'],
  ppm: 125,
  /** days before the anchor on which the tie was moved: the fix that did not work */
  tieMoved: 182,
} as const;

export function noStrainReliefTruth(anchor: DayNumber): Truth {
  const { key, plant, line, housing, outerRows, ppm } = noStrainRelief;
  return {
    key,
    excess: (run) =>
      isAt(run, plant, [line], -Infinity, anchor + 1) && run.program.housing.code === housing ? ppm : 0,
    shape: ({ program }) => ({
      cause: 'wire_dress',
      subCause: 'no_strain_relief',
      origin: 7,
      detection: { 8: 0.3, 9: 0.05 },
      fieldShare: 0.45,
      cavities: program.cavities.filter((mark) => outerRows.some((row) => mark.startsWith(row))),
      effects: { intermittent: 5, open_circuit: 3, high_resistance: 2, mating_blocked: 1 },
    }),
  };
}
