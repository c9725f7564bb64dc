import { defaultConfidence, type Estimate } from '../estimate.ts';
import { failureRate } from './failure-rate.ts';
import type { CountedExposure } from './rate-ratio.ts';

/**
 * Rates of several bars with exact intervals that hold together: each at confidence 1 - alpha / m for m bars with exposure.
 * Source: Bonferroni's inequality; the joint coverage is never below the confidence.
 *
 * @returns one estimate per bar, in the order given, whose interval states the joint confidence; see `failureRate`
 */
export function simultaneousRates(
  bars: readonly CountedExposure[],
  options: { per?: number; confidence?: number } = {},
): Estimate[] {
  const { per, confidence = defaultConfidence } = options;
  const known = Math.max(1, bars.filter(({ exposure }) => exposure).length);
  const each = 1 - (1 - confidence) / known;
  return bars.map(({ failures, exposure }) => {
    const rate = failureRate({ failures, exposure, per, confidence: each });
    return rate.reason === null ? { ...rate, interval: { ...rate.interval, confidence } } : rate;
  });
}
