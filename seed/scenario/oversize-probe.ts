import type { DayNumber } from '../calendar.ts';
import { isAt, type Truth } from './fault.ts';

/** A probe one size too large opens contacts at one position of one fixture: nothing fails before the test. */
export const oversizeProbe = {
  key: 'oversize-probe',
  plant: 'SUZ',
  lines: ['L3', 'L4'],
  fixture: 'TF-2',
  position: 'C4',
  /** days before the anchor */
  fitted: 215,
  changed: 125,
  ppm: 120,
} as const;

export function oversizeProbeTruth(anchor: DayNumber): Truth {
  const { key, plant, lines, fixture, position, fitted, changed, ppm } = oversizeProbe;
  return {
    key,
    excess: (run) => (isAt(run, plant, lines, anchor - fitted, anchor - changed) ? ppm : 0),
    shape: () => ({
      cause: 'probe_damage',
      subCause: 'probe_oversize',
      origin: 6,
      detection: { 8: 0.7, 9: 0.08 },
      fieldShare: 0.5,
      tool: fixture,
      fixturePosition: position,
      effects: { intermittent: 5, high_resistance: 3, open_circuit: 2 },
    }),
  };
}
