import { z } from 'zod';

/** Why a figure cannot be given. The screen says it in words; it is never replaced by a number. */
export const reasons = [
  'no_production',
  'exceeds_production',
  'no_reports',
  'too_few',
  'no_rate',
  'no_standard_cost',
  'no_cost',
  'not_finite',
] as const;
export const Reason = z.enum(reasons);
export type Reason = z.infer<typeof Reason>;

export const Interval = z.object({
  low: z.number(),
  high: z.number().nullable().describe('null: no upper limit'),
  confidence: z.number(),
});
export type Interval = z.infer<typeof Interval>;

/** A figure with its interval, or the reason why there is none. */
export const Estimate = z.union([
  z.object({ value: z.number(), interval: Interval, reason: z.null() }),
  z.object({ value: z.null(), interval: z.null(), reason: Reason }),
]);
export type Estimate = z.infer<typeof Estimate>;
