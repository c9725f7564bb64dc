import type { DayNumber } from '../calendar.ts';
import type { Run } from '../world.ts';
import { isAt } from './fault.ts';

/** Lines that built and failed, but whose production was not reported. Days before the anchor, both included. */
export const productionGaps = [
  { plant: 'TOL', line: 'L2', from: 75, to: 48 },
  { plant: 'POZ', line: 'L5', from: 16, to: 0 },
] as const;

export const isReported = (run: Run, anchor: DayNumber): boolean =>
  !productionGaps.some(({ plant, line, from, to }) => isAt(run, plant, [line], anchor - from, anchor - to + 1));
