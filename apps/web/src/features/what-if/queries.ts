import { infiniteQueryOptions, keepPreviousData, queryOptions, useQueryClient } from '@tanstack/react-query';
import { listJudgedEffects } from '#contracts/actions.ts';
import { listWhatIfs, readWhatIf } from '#contracts/what-if.ts';
import { call } from '#web/ui/http.ts';

export const whatIfsQuery = (query: object) =>
  infiniteQueryOptions({
    queryKey: ['what-if', 'list', query],
    queryFn: ({ signal, pageParam }) =>
      call(listWhatIfs, { query: { ...query, ...(pageParam && { cursor: pageParam }) }, signal }),
    initialPageParam: null as string | null,
    getNextPageParam: (page) => page.next,
    placeholderData: keepPreviousData,
  });

export const whatIfQuery = (id: string) =>
  queryOptions({
    queryKey: ['what-if', 'one', id],
    queryFn: ({ signal }) => call(readWhatIf, { params: { id }, signal }),
  });

/** What actions at these plants were seen to prevent. */
export const judgedQuery = (plant: string[] | undefined) =>
  queryOptions({
    queryKey: ['actions', 'judged-effects', plant],
    queryFn: async ({ signal }) => (await call(listJudgedEffects, { query: { plant }, signal })).items,
  });

export const useForgetWhatIfs = () => {
  const queries = useQueryClient();
  return () => queries.invalidateQueries({ queryKey: ['what-if'] });
};
