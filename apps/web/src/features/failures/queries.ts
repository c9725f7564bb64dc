import {
  infiniteQueryOptions,
  keepPreviousData,
  queryOptions,
  useMutation,
  useQueryClient,
} from '@tanstack/react-query';
import {
  cavityCounts,
  countReports,
  listReports,
  listSavedFilters,
  type Report,
  readReport,
  suggestMarks,
} from '#contracts/failures.ts';
import type { Filter } from '#contracts/shared/filter.ts';
import { call } from '#web/ui/http.ts';

const keys = {
  all: ['failures'] as const,
  list: (filter: Partial<Filter>) => ['failures', 'list', filter] as const,
  count: (filter: Partial<Filter>) => ['failures', 'count', filter] as const,
  cavities: (filter: Partial<Filter>) => ['failures', 'cavities', filter] as const,
  one: (id: string) => ['failures', 'one', id] as const,
  marks: (query: object) => ['failures', 'marks', query] as const,
  saved: ['saved-filters'] as const,
};
export const savedFiltersKey = keys.saved;

export const listQuery = (filter: Partial<Filter>) =>
  infiniteQueryOptions({
    queryKey: keys.list(filter),
    queryFn: ({ signal, pageParam }) =>
      call(listReports, {
        query: { ...(filter as object), limit: 100, ...(pageParam && { cursor: pageParam }) },
        signal,
      }),
    initialPageParam: null as string | null,
    getNextPageParam: (page) => page.next,
    placeholderData: keepPreviousData,
  });

export const countQuery = (filter: Partial<Filter>) =>
  queryOptions({
    queryKey: keys.count(filter),
    queryFn: ({ signal }) => call(countReports, { query: filter as object, signal }),
    placeholderData: keepPreviousData,
  });

/** Reports per cavity of one housing under the rest of the filter. */
export const cavitiesQuery = (filter: Partial<Filter>, housing: string) =>
  queryOptions({
    queryKey: keys.cavities(filter),
    queryFn: ({ signal }) => call(cavityCounts, { query: { ...(filter as object), housing: [housing] }, signal }),
    placeholderData: keepPreviousData,
  });

export const reportQuery = (id: string) =>
  queryOptions({
    queryKey: keys.one(id),
    queryFn: ({ signal }) => call(readReport, { params: { id }, signal }),
  });

export type MarkField = 'station' | 'shift' | 'reelLot' | 'housingLot' | 'fixturePosition';
export const marksQuery = (query: { plantId: string; lineId?: string; field: MarkField }) =>
  queryOptions({
    queryKey: keys.marks(query),
    queryFn: async ({ signal }) => (await call(suggestMarks, { query, signal })).items,
    staleTime: 5 * 60_000,
  });

export const savedFiltersQuery = queryOptions({
  queryKey: keys.saved,
  queryFn: async ({ signal }) => (await call(listSavedFilters, { signal })).items,
  staleTime: 5 * 60_000,
});

/** What a changed report makes stale: its lists, and every figure. */
export const useForgetReports = () => {
  const queries = useQueryClient();
  return () =>
    Promise.all([
      queries.invalidateQueries({ queryKey: keys.all }),
      queries.invalidateQueries({ queryKey: ['analyses'] }),
    ]);
};

/** A write that answers with the report as it is afterwards. */
export const useReportWrite = <Input>(write: (input: Input) => Promise<Report>) => {
  const queries = useQueryClient();
  const forget = useForgetReports();
  return useMutation({
    mutationFn: write,
    onSuccess: async (report) => {
      await forget();
      queries.setQueryData(keys.one(report.id), report);
    },
  });
};
