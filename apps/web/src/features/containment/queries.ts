import {
  infiniteQueryOptions,
  keepPreviousData,
  queryOptions,
  useMutation,
  useQueryClient,
} from '@tanstack/react-query';
import { readComplaint } from '#contracts/complaints.ts';
import * as contract from '#contracts/containment.ts';
import type { Input } from '#contracts/shared/endpoint.ts';
import { call } from '#web/ui/http.ts';

export const containmentsQuery = (filter: { state?: 'closed' | 'all' | undefined }) =>
  infiniteQueryOptions({
    queryKey: ['containment', 'list', filter],
    queryFn: ({ signal, pageParam }) =>
      call(contract.listContainments, { query: { ...filter, ...(pageParam && { cursor: pageParam }) }, signal }),
    initialPageParam: null as string | null,
    getNextPageParam: (page) => page.next,
  });
export const containmentQuery = (id: string) =>
  queryOptions({
    queryKey: ['containment', 'one', id],
    queryFn: ({ signal }) => call(contract.readContainment, { params: { id }, signal }),
  });
export const alertsQuery = infiniteQueryOptions({
  queryKey: ['containment', 'alerts'],
  queryFn: ({ signal, pageParam }) =>
    call(contract.listAlerts, { query: { state: 'all', ...(pageParam && { cursor: pageParam }) }, signal }),
  initialPageParam: null as string | null,
  getNextPageParam: (page) => page.next,
});
export const planQuery = (query: NonNullable<Input<typeof contract.planSample.query>> | null) =>
  queryOptions({
    queryKey: ['containment', 'plan', query],
    queryFn: ({ signal }) => call(contract.planSample, { query: query!, signal }),
    enabled: query !== null,
    placeholderData: keepPreviousData,
  });
export const complaintQuery = (id: string | undefined) =>
  queryOptions({
    queryKey: ['complaints', 'one', id],
    queryFn: ({ signal }) => call(readComplaint, { params: { id: id! }, signal }),
    enabled: id !== undefined,
  });

/** A write on containments; afterwards everything it can change is read anew. */
export const useWrite = <Given, Result>(work: (given: Given) => Promise<Result>) => {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: work,
    onSuccess: () =>
      Promise.all(
        ['containment', 'complaints', 'failures', 'notices', 'audit'].map((key) =>
          queries.invalidateQueries({ queryKey: [key] }),
        ),
      ),
  });
};
