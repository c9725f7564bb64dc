import { keepPreviousData, queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import type { z } from 'zod';
import * as contract from '#contracts/evidence.ts';
import type { FindingCode } from '#contracts/finding-catalogue.ts';
import { call } from '#web/ui/http.ts';

const keys = {
  one: (id: string) => ['evidence', 'one', id] as const,
  alike: (id: string) => ['evidence', 'alike', id] as const,
  record: (query: object) => ['evidence', 'record', query] as const,
  cases: (query: object) => ['evidence', 'cases', query] as const,
  opinions: ['evidence', 'opinions'] as const,
};
export const opinionsKey = keys.opinions;

export const evidenceQuery = (id: string) =>
  queryOptions({
    queryKey: keys.one(id),
    queryFn: ({ signal }) => call(contract.readEvidence, { params: { id }, signal }),
  });

export const alikeQuery = (id: string) =>
  queryOptions({
    queryKey: keys.alike(id),
    queryFn: async ({ signal }) => (await call(contract.similarUnsorted, { params: { id }, signal })).items,
  });

export const recordQuery = (query: Partial<contract.RecordFilter>) =>
  queryOptions({
    queryKey: keys.record(query),
    queryFn: ({ signal }) => call(contract.readRecord, { query: query as object, signal }),
    placeholderData: keepPreviousData,
  });

export const casesQuery = (query: Partial<z.output<typeof contract.CaseFilter>>) =>
  queryOptions({
    queryKey: keys.cases(query),
    queryFn: async ({ signal }) => (await call(contract.judgedCases, { query: query as object, signal })).items,
  });

export const opinionsQuery = queryOptions({
  queryKey: keys.opinions,
  queryFn: async ({ signal }) => (await call(contract.listOpinions, { signal })).items,
});

export const opinionQuery = (id: string) =>
  queryOptions({
    queryKey: [...keys.opinions, id],
    queryFn: ({ signal }) => call(contract.readOpinion, { params: { id }, signal }),
  });

export type FindingDraft = z.input<typeof contract.FindingInput>;

/** Takes or takes back findings; the answer is the evidence as it then is. */
export const useTakeFindings = (id: string) => {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (change: { findings?: FindingDraft[]; remove?: FindingCode[] }) =>
      call(contract.takeFindings, { params: { id }, body: { findings: [], remove: [], ...change } }),
    onSuccess: async (evidence) => {
      queries.setQueryData(keys.one(id), evidence);
      await queries.invalidateQueries({ queryKey: keys.alike(id) });
    },
  });
};

/** What a decision makes stale: the reports, the evidence, every figure. */
export const useForgetDecided = () => {
  const queries = useQueryClient();
  return () =>
    Promise.all(['failures', 'evidence', 'analyses'].map((first) => queries.invalidateQueries({ queryKey: [first] })));
};
