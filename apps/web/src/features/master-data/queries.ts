import { infiniteQueryOptions, keepPreviousData, queryOptions, useQueryClient } from '@tanstack/react-query';
import type { z } from 'zod';
import { masterData, readOrganisation, type StandardCost } from '#contracts/master-data.ts';
import type { Endpoint } from '#contracts/shared/endpoint.ts';
import { call } from '#web/ui/http.ts';
import { lookupKeys } from '#web/ui/lookup.ts';
import type { KindView, Row, Values } from './kinds.ts';

export interface ListFilter {
  q?: string;
  plant?: string[];
  retired?: boolean;
  due?: boolean;
}
type Any = z.ZodType<object, object>;
/** The endpoints of a kind, without the fields that tell the kinds apart. */
interface Plain {
  list: Endpoint<undefined, Any, undefined, z.ZodType<{ items: Row[]; next: string | null }>>;
  read: Endpoint<Any, undefined, undefined, z.ZodType<Row>>;
  create: Endpoint<undefined, undefined, Any, z.ZodType<Row>>;
  update: Endpoint<Any, undefined, Any, z.ZodType<Row>>;
  retire: Endpoint<Any, undefined, Any, z.ZodType<Row>>;
}
const plain = ({ resource }: KindView) => resource as unknown as Plain;

export const rowsQuery = (view: KindView, filter: ListFilter) =>
  infiniteQueryOptions({
    queryKey: [...lookupKeys.list(view.name, filter), 'pages'],
    queryFn: ({ signal, pageParam }) =>
      call(plain(view).list, { query: { ...filter, limit: 100, ...(pageParam && { cursor: pageParam }) }, signal }),
    initialPageParam: null as string | null,
    getNextPageParam: (page) => page.next,
    placeholderData: keepPreviousData,
  });

/** A row to be edited: always the present version, never one remembered from before. */
export const rowQuery = (view: KindView, id: string) =>
  queryOptions({
    queryKey: [...lookupKeys.one(view.name, id), 'edit'],
    queryFn: ({ signal }) => call(plain(view).read, { params: { id }, signal }),
    staleTime: 0,
    gcTime: 0,
  });

export const createRow = (view: KindView, body: Values, idempotencyKey: string) =>
  call(plain(view).create, { body, idempotencyKey });
export const updateRow = (view: KindView, { id, version }: Row, body: Values) =>
  call(plain(view).update, { params: { id }, body, version });
export const retireRow = (view: KindView, { id, version }: Row, retired: boolean) =>
  call(plain(view).retire, { params: { id }, body: { retired }, version });

export const groupQuery = queryOptions({
  queryKey: [...lookupKeys.all, 'group'],
  queryFn: ({ signal }) => call(readOrganisation, { signal }),
});

/** Every standard cost of a plant; there are at most seventy a date. */
export const plantCostsQuery = (plantId: string) =>
  queryOptions({
    queryKey: lookupKeys.list('standard-costs', { plantId, all: true }),
    queryFn: async ({ signal }) => {
      const rows: StandardCost[] = [];
      let cursor: string | null = null;
      do {
        const query: object = { plant: [plantId], limit: 200, ...(cursor && { cursor }) };
        const page: { items: StandardCost[]; next: string | null } = await call(masterData.standardCosts.list, {
          query,
          signal,
        });
        rows.push(...page.items);
        cursor = page.next;
      } while (cursor);
      return rows;
    },
  });

/** Names, lists and every figure may follow from master data. */
export const useForgetMasterData = () => {
  const queries = useQueryClient();
  return () => queries.invalidateQueries();
};
