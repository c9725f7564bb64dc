import { z } from 'zod';
import { Interval, Reason } from './estimate.ts';
import { Day } from './scalars.ts';

/** Half-open in plant days. */
export const Period = z.object({ from: Day, to: Day });
export type Period = z.infer<typeof Period>;

/** How a figure moved against an earlier period, and whether that is more than noise. */
export const Change = z.union([
  z.object({
    ratio: z
      .number()
      .nullable()
      .describe(
        'now ÷ before; null where there was nothing before, so that only the interval’s lower limit says how much it rose',
      ),
    interval: Interval,
    verdict: z
      .enum(['up', 'down', 'within_noise'])
      .describe('false discovery held at 10 % over the bars (Benjamini–Hochberg)'),
    basis: z
      .enum(['rate', 'share', 'count'])
      .describe('per terminal inserted; as odds among all reports; per day where no production is known'),
    reason: z.null(),
  }),
  z.object({ ratio: z.null(), interval: z.null(), verdict: z.null(), basis: z.null(), reason: Reason }),
]);
export type Change = z.infer<typeof Change>;
