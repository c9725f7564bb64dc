import { type DayNumber, weekday } from '../calendar.ts';
import { isAt, type Truth } from './fault.ts';

/** In the last full week, leads went to one line in bulk boxes: the rise that the first look at the week should show. */
export const bulkBoxes = { key: 'bulk-boxes', plant: 'QRO', line: 'L4', ppm: 400 } as const;

/** Monday of the last full week, as seen on the day after the anchor. */
export const lastFullWeek = (anchor: DayNumber): DayNumber => anchor + 1 - (weekday(anchor + 1) - 1) - 7;

export const bulkBoxesTruth = (anchor: DayNumber): Truth => ({
  key: bulkBoxes.key,
  excess: (run) => (isAt(run, bulkBoxes.plant, [bulkBoxes.line], lastFullWeek(anchor), anchor + 1) ? bulkBoxes.ppm : 0),
  shape: () => ({ cause: 'handling', subCause: 'bulk_box', origin: 2 }),
});
