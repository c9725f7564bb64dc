import {
  infiniteQueryOptions,
  keepPreviousData,
  queryOptions,
  useMutation,
  useQueryClient,
} from '@tanstack/react-query';
import * as contract from '#contracts/complaints.ts';
import { listColleagues } from '#contracts/people.ts';
import type { Input } from '#contracts/shared/endpoint.ts';
import { call, problemFrom } from '#web/ui/http.ts';

export type DeskFilter = NonNullable<Input<typeof contract.listComplaints.query>>;
export type Sought = NonNullable<Input<typeof contract.similarCases.query>>;

export const deskQuery = (filter: DeskFilter) =>
  infiniteQueryOptions({
    queryKey: ['complaints', 'desk', filter],
    queryFn: ({ signal, pageParam }) =>
      call(contract.listComplaints, { query: { ...filter, ...(pageParam && { cursor: pageParam }) }, signal }),
    initialPageParam: null as string | null,
    getNextPageParam: (page) => page.next,
    placeholderData: keepPreviousData,
    refetchInterval: 60_000,
  });
export const complaintQuery = (id: string) =>
  queryOptions({
    queryKey: ['complaints', 'one', id],
    queryFn: ({ signal }) => call(contract.readComplaint, { params: { id }, signal }),
    refetchInterval: 60_000,
  });
export const similarQuery = (sought: Sought | null) =>
  queryOptions({
    queryKey: ['complaints', 'similar', sought],
    queryFn: async ({ signal }) => (await call(contract.similarCases, { query: sought!, signal })).items,
    enabled: sought !== null,
    placeholderData: keepPreviousData,
  });
export const ownersQuery = (plantId: string) =>
  queryOptions({
    queryKey: ['people', 'colleagues', plantId, 'complaints.write'],
    queryFn: async ({ signal }) =>
      (await call(listColleagues, { params: { id: plantId }, query: { permission: 'complaints.write' }, signal }))
        .items,
    enabled: plantId !== '',
    staleTime: 5 * 60_000,
  });

/** A write on complaints; afterwards lists, notices and the complaint itself are read anew. */
export const useWrite = <Given, Result>(work: (given: Given) => Promise<Result>) => {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: work,
    onSuccess: () =>
      Promise.all(['complaints', 'notices', 'audit'].map((key) => queries.invalidateQueries({ queryKey: [key] }))),
  });
};

export async function sendPhoto({ id, file }: { id: string; file: File }): Promise<void> {
  const form = new FormData();
  form.append('photo', file);
  const response = await fetch(`/api/v1/complaints/${id}/photos`, { method: 'POST', body: form });
  if (!response.ok) throw await problemFrom(response);
}
