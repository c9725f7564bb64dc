import { infiniteQueryOptions, keepPreviousData, useQueryClient } from '@tanstack/react-query';
import { listProduction } from '#contracts/production.ts';
import type { Input } from '#contracts/shared/endpoint.ts';
import { call } from '#web/ui/http.ts';

export type ProductionFilter = Omit<NonNullable<Input<typeof listProduction.query>>, 'cursor' | 'limit'>;

export const productionQuery = (filter: object) =>
  infiniteQueryOptions({
    queryKey: ['production', filter],
    queryFn: ({ signal, pageParam }) =>
      call(listProduction, {
        query: { ...(filter as ProductionFilter), limit: 100, ...(pageParam && { cursor: pageParam }) },
        signal,
      }),
    initialPageParam: null as string | null,
    getNextPageParam: (page) => page.next,
    placeholderData: keepPreviousData,
  });

/** Changed denominators make every rate stale. */
export const useForgetProduction = () => {
  const queries = useQueryClient();
  return () =>
    Promise.all([
      queries.invalidateQueries({ queryKey: ['production'] }),
      queries.invalidateQueries({ queryKey: ['analyses'] }),
    ]);
};
