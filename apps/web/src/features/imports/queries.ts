import {
  infiniteQueryOptions,
  keepPreviousData,
  queryOptions,
  useMutation,
  useQueryClient,
} from '@tanstack/react-query';
import type { z } from 'zod';
import { importTerms } from '#contracts/import-terms.ts';
import type { Import } from '#contracts/imports.ts';
import * as contract from '#contracts/imports.ts';
import { call } from '#web/ui/http.ts';
import { useLocale } from '#web/ui/language.ts';
import { isRunning } from './steps.ts';

const keys = { all: ['imports'] as const, one: (id: string) => ['imports', 'one', id] as const };
const pollEvery = 700;

export const useImportTerms = () => importTerms[useLocale()];

export const importsQuery = infiniteQueryOptions({
  queryKey: ['imports', 'list'],
  queryFn: ({ signal, pageParam }) =>
    call(contract.listImports, { query: { limit: 50, ...(pageParam && { cursor: pageParam }) }, signal }),
  initialPageParam: null as string | null,
  getNextPageParam: (page) => page.next,
  placeholderData: keepPreviousData,
  refetchInterval: ({ state }) => (state.data?.pages[0]?.items.some(isRunning) ? pollEvery * 3 : false),
});

/** Asks again while the import runs. */
export const importQuery = (id: string) =>
  queryOptions({
    queryKey: keys.one(id),
    queryFn: ({ signal }) => call(contract.readImport, { params: { id }, signal }),
    refetchInterval: ({ state }) => (state.data && isRunning(state.data) ? pollEvery : false),
  });

/** A step taken with one import: its answer is the import as it is now. */
function useStep<Given>(job: Import, take: (given: Given) => Promise<Import>) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: take,
    onSuccess: (now) => {
      queries.setQueryData(keys.one(job.id), now);
      void queries.invalidateQueries({ queryKey: ['imports', 'list'] });
    },
    onError: () => void queries.invalidateQueries({ queryKey: keys.one(job.id) }),
  });
}

const here = ({ id, version }: Import) => ({ params: { id }, version });

export const useChangeLayout = (job: Import) =>
  useStep(job, (body: { layout: contract.Layout; headerLine: number | null }) =>
    call(contract.changeLayout, { ...here(job), body }),
  );
/** Keeps the mapping and checks the whole file. */
export const useMapAndCheck = (job: Import) =>
  useStep(job, async (body: z.input<typeof contract.Mapping>) =>
    call(contract.checkImport, here(await call(contract.changeMapping, { ...here(job), body }))),
  );
/** Keeps what the values mean and checks the whole file again. */
export const useDefineAndCheck = (job: Import) =>
  useStep(job, async (values: z.input<typeof contract.ValueMeaning>[]) =>
    call(contract.checkImport, here(await call(contract.defineValues, { ...here(job), body: { values } }))),
  );
export const useCommit = (job: Import) =>
  useStep(job, (skipRefused: boolean) => call(contract.commitImport, { ...here(job), body: { skipRefused } }));
export const useCancel = (job: Import) => useStep(job, () => call(contract.cancelImport, { params: { id: job.id } }));
