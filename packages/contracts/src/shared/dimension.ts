import { z } from 'zod';

/** A dimension has the name of the filter field that selects one of its bars. */
export const dimensions = [
  'cause',
  'subCause',
  'plant',
  'line',
  'station',
  'shift',
  'housing',
  'terminal',
  'wire',
  'cavity',
  'tool',
  'lot',
  'housingLot',
  'customer',
  'found',
  'origin',
  'effect',
  'source',
] as const;
export const Dimension = z.enum(dimensions);
export type Dimension = z.infer<typeof Dimension>;
