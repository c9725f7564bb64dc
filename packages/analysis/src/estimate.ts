/** Why a figure cannot be given; the same words as the API's `Reason`. */
export type Reason =
  | 'no_production'
  | 'exceeds_production'
  | 'no_reports'
  | 'too_few'
  | 'no_rate'
  | 'no_standard_cost'
  | 'no_cost'
  | 'not_finite';

/** A two-sided interval; `high: null` means that there is no upper limit. `confidence` is a fraction such as 0.95. */
export type Interval = { low: number; high: number | null; confidence: number };

/** An interval that always has an upper limit. */
export type ClosedInterval = { low: number; high: number; confidence: number };

export type NotComputable = { value: null; interval: null; reason: Reason };

/** A figure with its interval, or the reason why there is none; the same shape as the API's `Estimate`. */
export type Estimate = { value: number; interval: Interval; reason: null } | NotComputable;

export const estimate = (value: number, interval: Interval): Estimate => ({ value, interval, reason: null });

export const notComputable = (reason: Reason): NotComputable => ({ value: null, interval: null, reason });

/** The confidence used where the caller names none. */
export const defaultConfidence = 0.95;
