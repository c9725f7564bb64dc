import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import type { z } from 'zod';
import { type ParetoQuery, pareto, rates } from '#contracts/analyses.ts';
import { daysBetween } from '#contracts/shared/format.ts';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { call } from '#web/ui/http.ts';

export type ParetoSearch = Partial<z.output<typeof ParetoQuery>>;

/** The filter alone, without how its answer is ranked and measured. */
export const filterIn = ({
  dimension: _d,
  measure: _m,
  compare: _c,
  top: _t,
  bars: _b,
  ...filter
}: ParetoSearch): FilterValues => filter;

export const paretoQuery = (search: ParetoSearch) =>
  queryOptions({
    queryKey: ['analyses', 'pareto', search],
    queryFn: ({ signal }) => call(pareto, { query: search as object, signal }),
    placeholderData: keepPreviousData,
  });

/** Half a year of weeks can still be told apart on a screen; beyond that, months. */
const mostWeeks = 26;

export const ratesQuery = (filter: FilterValues) => {
  const { from, to } = filter;
  const bucket = from && to && daysBetween(from, to) > 7 * mostWeeks ? 'month' : 'week';
  return queryOptions({
    queryKey: ['analyses', 'rates', filter, bucket],
    queryFn: ({ signal }) => call(rates, { query: { ...(filter as object), bucket }, signal }),
    placeholderData: keepPreviousData,
  });
};
