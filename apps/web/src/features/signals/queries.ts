import { keepPreviousData, queryOptions, useQueryClient } from '@tanstack/react-query';
import { findSignals } from '#contracts/signals.ts';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { call } from '#web/ui/http.ts';

const key = ['analyses', 'signals'];

export const signalsQuery = (filter: FilterValues) =>
  queryOptions({
    queryKey: [...key, filter],
    queryFn: ({ signal }) => call(findSignals, { query: filter as object, signal }),
    placeholderData: keepPreviousData,
  });

export const useForgetSignals = () => {
  const queries = useQueryClient();
  return () => queries.invalidateQueries({ queryKey: key });
};
