import {
  infiniteQueryOptions,
  keepPreviousData,
  queryOptions,
  useMutation,
  useQueryClient,
} from '@tanstack/react-query';
import {
  type ActionFilter,
  type ActionOf,
  addEvidence,
  countActions,
  createAction,
  listActions,
  moveAction,
  planEffect,
  previewEffect,
  readAction,
  readEffect,
  removeEvidence,
  updateAction,
  verifyAction,
} from '#contracts/actions.ts';
import { listReports } from '#contracts/failures.ts';
import { listColleagues } from '#contracts/people.ts';
import type { Input } from '#contracts/shared/endpoint.ts';
import { call, problemFrom } from '#web/ui/http.ts';

export type Filter = Partial<ActionFilter>;

export const actionsQuery = (filter: Filter, limit = 50) =>
  infiniteQueryOptions({
    queryKey: ['actions', 'list', filter, limit],
    queryFn: ({ signal, pageParam }) =>
      call(listActions, { query: { ...filter, limit, ...(pageParam && { cursor: pageParam }) } as object, signal }),
    initialPageParam: null as string | null,
    getNextPageParam: (page) => page.next,
    placeholderData: keepPreviousData,
  });
export const countQuery = (filter: Filter) =>
  queryOptions({
    queryKey: ['actions', 'count', filter],
    queryFn: ({ signal }) => call(countActions, { query: filter as object, signal }),
    placeholderData: keepPreviousData,
  });
export const actionQuery = (id: string) =>
  queryOptions({
    queryKey: ['actions', 'one', id],
    queryFn: ({ signal }) => call(readAction, { params: { id }, signal }),
  });
export const effectQuery = (id: string) =>
  queryOptions({
    queryKey: ['actions', 'effect', id],
    queryFn: async ({ signal }) => (await call(readEffect, { params: { id }, signal })).effect,
  });
export const colleaguesQuery = (plantId: string) =>
  queryOptions({
    queryKey: ['people', 'colleagues', plantId, 'actions.write'],
    queryFn: async ({ signal }) =>
      (await call(listColleagues, { params: { id: plantId }, query: { permission: 'actions.write' }, signal })).items,
    staleTime: 5 * 60_000,
  });
export const previewQuery = (body: Input<typeof previewEffect.body> | null) =>
  queryOptions({
    queryKey: ['actions', 'preview', body],
    queryFn: ({ signal }) => call(previewEffect, { body: body!, signal }),
    enabled: body !== null,
    retry: false,
    placeholderData: keepPreviousData,
  });

const useForget = () => {
  const queries = useQueryClient();
  return () =>
    Promise.all(['actions', 'notices', 'audit'].map((key) => queries.invalidateQueries({ queryKey: [key] })));
};

type Version = Pick<ActionOf, 'id' | 'version'>;
const of = ({ id, version }: Version) => ({ params: { id }, version });

/** Every write on an action; afterwards lists, counts and notices are read anew. */
export const useActionWrites = () => {
  const onSuccess = useForget();
  return {
    create: useMutation({
      mutationFn: ({ body, key }: { body: Input<typeof createAction.body>; key: string }) =>
        call(createAction, { body, idempotencyKey: key }),
      onSuccess,
    }),
    update: useMutation({
      mutationFn: ({ action, body }: { action: Version; body: Input<typeof updateAction.body> }) =>
        call(updateAction, { ...of(action), body }),
      onSuccess,
    }),
    move: useMutation({
      mutationFn: ({ action, body }: { action: Version; body: Input<typeof moveAction.body> }) =>
        call(moveAction, { ...of(action), body }),
      onSuccess,
    }),
    verify: useMutation({
      mutationFn: ({ action, body }: { action: Version; body: Input<typeof verifyAction.body> }) =>
        call(verifyAction, { ...of(action), body }),
      onSuccess,
    }),
    plan: useMutation({
      mutationFn: ({ action, body }: { action: Version; body: Input<typeof planEffect.body> }) =>
        call(planEffect, { ...of(action), body }),
      onSuccess,
    }),
    addText: useMutation({
      mutationFn: ({ id, body }: { id: string; body: Input<typeof addEvidence.body> }) =>
        call(addEvidence, { params: { id }, body }),
      onSuccess,
    }),
    addReport: useMutation({
      mutationFn: async ({ id, plantId, number }: { id: string; plantId: string; number: string }) => {
        const { items } = await call(listReports, { query: { plant: [plantId], q: number, limit: 20 } as object });
        const found = items.find((report) => report.number.toLowerCase() === number.toLowerCase());
        if (!found) return false;
        await call(addEvidence, { params: { id }, body: { failureId: found.id } });
        return true;
      },
      onSuccess,
    }),
    addFile: useMutation({ mutationFn: sendFile, onSuccess }),
    remove: useMutation({ mutationFn: (id: string) => call(removeEvidence, { params: { id } }), onSuccess }),
  };
};

async function sendFile({ id, file }: { id: string; file: File }): Promise<void> {
  const form = new FormData();
  form.append('file', file);
  const response = await fetch(`/api/v1/actions/${id}/files`, { method: 'POST', body: form });
  if (!response.ok) throw await problemFrom(response);
}
