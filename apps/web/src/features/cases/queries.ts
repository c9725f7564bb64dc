import { infiniteQueryOptions, queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import type { z } from 'zod';
import type { CaseContent, Discipline, PartName, SignRole } from '#contracts/case-parts.ts';
import * as contract from '#contracts/cases.ts';
import type { Endpoint } from '#contracts/shared/endpoint.ts';
import type { IdParams } from '#contracts/shared/scalars.ts';
import { call } from '#web/ui/http.ts';

export type Filter = { plant?: string[]; state?: contract.Case['state'][]; q?: string };
const keys = {
  all: ['cases'] as const,
  one: (id: string) => ['cases', 'one', id] as const,
};

export const casesQuery = (filter: Filter & { failure?: string; complaint?: string }) =>
  infiniteQueryOptions({
    queryKey: [...keys.all, 'list', filter],
    queryFn: ({ pageParam, signal }) =>
      call(contract.listCases, { query: { ...filter, limit: 50, ...(pageParam && { cursor: pageParam }) }, signal }),
    initialPageParam: '',
    getNextPageParam: ({ next }) => next,
  });
export const caseQuery = (id: string) =>
  queryOptions({
    queryKey: keys.one(id),
    queryFn: ({ signal }) => call(contract.readCase, { params: { id }, signal }),
  });
export const historyQuery = (id: string) =>
  queryOptions({
    queryKey: [...keys.one(id), 'history'],
    queryFn: ({ signal }) => call(contract.caseHistory, { params: { id }, query: { limit: 100 }, signal }),
  });
export const checkQuery = (id: string, version: number) =>
  queryOptions({
    queryKey: [...keys.one(id), 'check', version],
    queryFn: ({ signal }) => call(contract.checkDocument, { params: { id }, signal }),
  });

export const useOpenCase = () =>
  useMutation({
    mutationFn: (body: z.input<typeof contract.NewCase>) =>
      call(contract.openCase, { body, idempotencyKey: crypto.randomUUID() }),
  });

/** A change whose answer is the case as it then is. */
function useCaseChange<Input>(id: string, change: (input: Input) => Promise<contract.Case>) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: change,
    onSuccess: (it) => {
      queries.setQueryData(keys.one(id), it);
      return queries.invalidateQueries({ queryKey: keys.all, refetchType: 'none' });
    },
  });
}

export const useSavePart = <Name extends PartName>(id: string, name: Name) =>
  useCaseChange(id, ({ version, content }: { version: number; content: CaseContent[Name] }) =>
    call(
      contract.savePartOf[name] as Endpoint<z.ZodType<IdParams>, undefined, z.ZodType<object>, typeof contract.Case>,
      {
        params: { id },
        version,
        body: content,
      },
    ),
  );
export const useSign = (id: string) =>
  useCaseChange(id, ({ discipline, version, role }: { discipline: Discipline; version: number; role: SignRole }) =>
    role === 'product_safety'
      ? call(contract.signForProductSafety, { params: { id }, version })
      : call(contract.signDiscipline, { params: { id, discipline: `${discipline}` }, version, body: { role } }),
  );
export const useReopen = (id: string) =>
  useCaseChange(id, ({ discipline, version, reason }: { discipline: Discipline; version: number; reason: string }) =>
    call(contract.reopenDiscipline, { params: { id, discipline: `${discipline}` }, version, body: { reason } }),
  );
type HeadInput = Omit<z.input<typeof contract.NewCase>, 'plantId'>;
export const useUpdateHead = (id: string) =>
  useCaseChange(id, ({ version, body }: { version: number; body: HeadInput }) =>
    call(contract.updateCase, { params: { id }, version, body }),
  );

/** A change whose answer is not the case: it is read anew. */
function useAddition<Input, Result>(id: string, add: (input: Input) => Promise<Result>) {
  const queries = useQueryClient();
  return useMutation({ mutationFn: add, onSuccess: () => queries.invalidateQueries({ queryKey: keys.one(id) }) });
}
export const useComment = (id: string) =>
  useAddition(id, (body: { discipline: Discipline; text: string }) =>
    call(contract.addComment, { params: { id }, body, idempotencyKey: crypto.randomUUID() }),
  );
const fileTarget = contract.addAttachment as unknown as Endpoint<
  z.ZodType<IdParams>,
  undefined,
  z.ZodType<FormData, FormData>,
  typeof contract.Attachment
>;
export const useAttach = (id: string) =>
  useAddition(id, ({ discipline, file }: { discipline: Discipline; file: File }) => {
    const body = new FormData();
    body.append('discipline', String(discipline));
    body.append('file', file, file.name);
    return call(fileTarget, { params: { id }, body, idempotencyKey: crypto.randomUUID() });
  });
export const useDetach = (id: string) =>
  useAddition(id, (attachmentId: string) => call(contract.removeAttachment, { params: { id: attachmentId } }));
export const useKeep = (id: string) =>
  useAddition(id, (body: { format: 'pdf' | 'docx'; recipient: string }) =>
    call(contract.keepDocument, { params: { id }, body: { ...body, note: null }, idempotencyKey: crypto.randomUUID() }),
  );
