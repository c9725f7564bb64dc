import type { SignalFound } from '#contracts/signals.ts';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import type { Period } from '#web/ui/period.ts';

/** The filter of the page narrowed to a signal's reports; the period is the one that was counted. */
export const reportsOf = (
  { opens }: Pick<SignalFound, 'opens'>,
  filter: FilterValues,
  { from, to }: Period,
): FilterValues => {
  const { currency: _, ...rest } = filter;
  return { ...rest, from, to, ...opens };
};
