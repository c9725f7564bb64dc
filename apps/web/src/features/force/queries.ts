import { infiniteQueryOptions, keepPreviousData, queryOptions, useQueryClient } from '@tanstack/react-query';
import { forceDetail, forceOverview, listForce } from '#contracts/force.ts';
import type { ForceKind } from '#contracts/taxonomy.ts';
import { call } from '#web/ui/http.ts';

export const overviewQuery = (filter: object) =>
  queryOptions({
    queryKey: ['force', 'overview', filter],
    queryFn: ({ signal }) => call(forceOverview, { query: filter, signal }),
    placeholderData: keepPreviousData,
  });

export const detailQuery = (id: string, filter: { kind: ForceKind }) =>
  queryOptions({
    queryKey: ['force', 'detail', id, filter],
    queryFn: ({ signal }) => call(forceDetail, { params: { id }, query: filter, signal }),
    placeholderData: keepPreviousData,
  });

export const samplesQuery = (filter: object) =>
  infiniteQueryOptions({
    queryKey: ['force', 'samples', filter],
    queryFn: ({ signal, pageParam }) =>
      call(listForce, { query: { ...filter, limit: 20, ...(pageParam && { cursor: pageParam }) }, signal }),
    initialPageParam: null as string | null,
    getNextPageParam: (page) => page.next,
    placeholderData: keepPreviousData,
  });

export const useForgetForces = () => {
  const queries = useQueryClient();
  return () => queries.invalidateQueries({ queryKey: ['force'] });
};
