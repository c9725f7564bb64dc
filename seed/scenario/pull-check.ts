import type { DayNumber } from '../calendar.ts';
import { isAt, type Truth } from './fault.ts';

/** Terminals left short of their lock, until a push-click-pull check at insertion stopped most of them: the fix that worked. */
export const pullCheck = {
  key: 'pull-check',
  plant: 'QRO',
  line: 'L2',
  /** days before the anchor from which every inserted terminal is pulled */
  introduced: 200,
  /** extra reports per million before and after */
  ppm: [55, 3],
} as const;

export const pullCheckTruth = (anchor: DayNumber): Truth => ({
  key: pullCheck.key,
  excess: (run) => {
    if (!isAt(run, pullCheck.plant, [pullCheck.line], -Infinity, anchor + 1)) return 0;
    return run.day < anchor - pullCheck.introduced ? pullCheck.ppm[0] : pullCheck.ppm[1];
  },
  shape: () => ({ cause: 'partial_seat', subCause: 'not_pushed_home', origin: 4 }),
});
