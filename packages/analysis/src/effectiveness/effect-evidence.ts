import { type Counted, evidenceOfLowerRate } from './evidence-of-lower-rate.ts';

/**
 * Evidence that rate after / rate before lies below a ratio (1: the rate fell), strongest where it is the promised one.
 *
 * @param promised the promised ratio, 0 to 1
 */
export const evidenceBelow = (before: Counted, after: Counted, ratio: number, promised: number): number =>
  evidenceOfLowerRate({ ...after, exposure: after.exposure * ratio }, before, Math.min(1, promised / ratio));

/** Evidence that it lies above a ratio (the promised one: the promise is not kept), strongest where nothing changed. */
export const evidenceAbove = (before: Counted, after: Counted, ratio: number): number =>
  evidenceOfLowerRate(before, { ...after, exposure: after.exposure * ratio }, Math.min(1, ratio));
