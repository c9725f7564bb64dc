import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import type { z } from 'zod';
import { type ParetoQuery, pareto } from '#contracts/analyses.ts';
import { call } from '#web/ui/http.ts';

export type ParetoSearch = Partial<z.output<typeof ParetoQuery>>;

export const paretoKeys = { all: ['analyses', 'pareto'] as const };

export const paretoQuery = (search: ParetoSearch) =>
  queryOptions({
    queryKey: [...paretoKeys.all, search],
    queryFn: ({ signal }) => call(pareto, { query: search as object, signal }),
    placeholderData: keepPreviousData,
  });
