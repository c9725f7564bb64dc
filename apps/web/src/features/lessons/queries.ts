import { infiniteQueryOptions, queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import type { z } from 'zod';
import * as contract from '#contracts/lessons.ts';
import { call } from '#web/ui/http.ts';

export const lessonsQuery = (q: string | undefined) =>
  infiniteQueryOptions({
    queryKey: ['lessons', 'list', q],
    queryFn: ({ pageParam, signal }) =>
      call(contract.listLessons, {
        query: { limit: 50, ...(q && { q }), ...(pageParam && { cursor: pageParam }) },
        signal,
      }),
    initialPageParam: '',
    getNextPageParam: ({ next }) => next,
  });
export const offeredQuery = (query: z.input<NonNullable<typeof contract.offerLessons.query>>) =>
  queryOptions({
    queryKey: ['lessons', 'offered', query],
    queryFn: async ({ signal }) => (await call(contract.offerLessons, { query, signal })).items,
    staleTime: 60_000,
  });
export const askedQuery = queryOptions({
  queryKey: ['lessons', 'asked'],
  queryFn: async ({ signal }) => (await call(contract.listReadAcross, { query: { limit: 100 }, signal })).items,
});
export const useAnswer = ({ id, version }: contract.AskedReadAcross) => {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (body: z.input<NonNullable<typeof contract.answerReadAcross.body>>) =>
      call(contract.answerReadAcross, { params: { id }, version, body }),
    onSuccess: () => Promise.all(['lessons', 'actions'].map((key) => queries.invalidateQueries({ queryKey: [key] }))),
  });
};
