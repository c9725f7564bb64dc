import { infiniteQueryOptions, keepPreviousData, useQueryClient } from '@tanstack/react-query';
import { listPeople, listTokens } from '#contracts/people.ts';
import { call } from '#web/ui/http.ts';

export const peopleQuery = (filter: object) =>
  infiniteQueryOptions({
    queryKey: ['people', filter],
    queryFn: ({ signal, pageParam }) =>
      call(listPeople, { query: { ...filter, limit: 100, ...(pageParam && { cursor: pageParam }) } as object, signal }),
    initialPageParam: null as string | null,
    getNextPageParam: (page) => page.next,
    placeholderData: keepPreviousData,
  });

export const tokensQuery = infiniteQueryOptions({
  queryKey: ['tokens'],
  queryFn: ({ signal, pageParam }) =>
    call(listTokens, { query: { limit: 100, ...(pageParam && { cursor: pageParam }) }, signal }),
  initialPageParam: null as string | null,
  getNextPageParam: (page) => page.next,
});

export const useForgetPeople = () => {
  const queries = useQueryClient();
  return () =>
    Promise.all(['people', 'tokens', 'session', 'audit'].map((key) => queries.invalidateQueries({ queryKey: [key] })));
};
