import type { Estimate } from '#contracts/shared/estimate.ts';
import type { Whisker } from './whiskers.ts';

/** The interval of a figure as it is drawn. */
export const whiskerOf = ({ value, interval }: Estimate): Whisker =>
  value === null ? null : { low: interval.low, high: interval.high ?? Number.MAX_VALUE };

/** Limits for an axis that has to show every interval; an open one ends where the picture ends. */
export function rangeOf(figures: readonly Estimate[]): { suggestedMin: number; suggestedMax: number } {
  const ends = figures.flatMap(({ value, interval }) =>
    value === null ? [] : [value, interval.low, interval.high ?? value],
  );
  return { suggestedMin: Math.min(0, ...ends), suggestedMax: Math.max(0, ...ends) };
}
