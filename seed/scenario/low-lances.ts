import type { DayNumber } from '../calendar.ts';
import type { Run } from '../world.ts';
import { isAt, type Truth } from './fault.ts';

/** One reel lot of a terminal was stamped with low lances and went to two plants, three weeks apart. */
export const lowLances = {
  key: 'low-lances',
  terminal: 'TC-05L',
  lot: 'R05-4471-X',
  /** plant, line, first and last day before the anchor on which the lot was used */
  uses: [
    { plant: 'QRO', line: 'L1', from: 118, to: 100 },
    { plant: 'POZ', line: 'L1', from: 97, to: 79 },
  ],
  ppm: 420,
} as const;

/** Whether the run was built from the bad lot. */
export const usesBadLot = (run: Run, anchor: DayNumber): boolean =>
  run.program.terminal.code === lowLances.terminal &&
  lowLances.uses.some(({ plant, line, from, to }) => isAt(run, plant, [line], anchor - from, anchor - to + 1));

export const lowLancesTruth = (anchor: DayNumber): Truth => ({
  key: lowLances.key,
  excess: (run) => (usesBadLot(run, anchor) ? lowLances.ppm : 0),
  shape: () => ({
    cause: 'component',
    subCause: 'lance_low',
    origin: 1,
    detection: { 1: 0.02, 4: 0.25, 5: 0.45, 6: 0.35, 8: 0.5 },
  }),
});
