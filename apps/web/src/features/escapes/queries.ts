import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import { costs, escapes } from '#contracts/analyses.ts';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { call } from '#web/ui/http.ts';

export const escapesQuery = (filter: FilterValues) =>
  queryOptions({
    queryKey: ['analyses', 'escapes', filter],
    queryFn: ({ signal }) => call(escapes, { query: filter as object, signal }),
    placeholderData: keepPreviousData,
  });

export const costsQuery = (filter: FilterValues) =>
  queryOptions({
    queryKey: ['analyses', 'costs', filter],
    queryFn: ({ signal }) => call(costs, { query: filter as object, signal }),
    placeholderData: keepPreviousData,
  });
