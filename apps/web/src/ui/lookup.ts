/** Names of plants, parts and people's places, for filters and forms. Keys begin with `master-data`, so that an edit refreshes them. */
import { queryOptions, useQuery } from '@tanstack/react-query';
import type { z } from 'zod';
import { masterData, type Plant } from '#contracts/master-data.ts';
import type { Endpoint } from '#contracts/shared/endpoint.ts';
import { call } from './http.ts';

export const lookupKeys = {
  all: ['master-data'] as const,
  list: (name: string, query: object) => ['master-data', name, 'list', query] as const,
  one: (name: string, id: string) => ['master-data', name, 'one', id] as const,
};

/** What a lookup needs of a row. */
export interface Named {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly plantId?: string;
}
/** How a row is named in a field: its code, and its name where that says more. */
export const rowText = ({ code, name }: Pick<Named, 'code' | 'name'>): string =>
  code === name ? code : `${code} · ${name}`;
export type NamedResource = 'plants' | 'lines' | 'stages' | 'housings' | 'terminals' | 'wires' | 'tools' | 'customers';

interface LookupQuery {
  q?: string;
  plant?: readonly string[];
}

const listOf = (name: NamedResource) =>
  masterData[name].list as unknown as Endpoint<
    undefined,
    z.ZodType<object, object>,
    undefined,
    z.ZodType<{ items: Named[] }>
  >;
const readOf = (name: NamedResource) =>
  masterData[name].read as unknown as Endpoint<z.ZodType<object, object>, undefined, undefined, z.ZodType<Named>>;

/** The first rows that match, for a field one types into. */
export const searchQuery = (name: NamedResource, query: LookupQuery) =>
  queryOptions({
    queryKey: lookupKeys.list(name, query),
    queryFn: async ({ signal }) => (await call(listOf(name), { query: { ...query, limit: 50 }, signal })).items,
    staleTime: 60_000,
  });

export const namedQuery = (name: NamedResource, id: string) =>
  queryOptions({
    queryKey: lookupKeys.one(name, id),
    queryFn: ({ signal }) => call(readOf(name), { params: { id }, signal }),
    staleTime: 5 * 60_000,
  });

/** All plants the person may see; there are few. */
export const plantsQuery = queryOptions({
  queryKey: lookupKeys.list('plants', {}),
  queryFn: async ({ signal }): Promise<Plant[]> =>
    (await call(masterData.plants.list, { query: { limit: 200 }, signal })).items,
  staleTime: 5 * 60_000,
});
export const usePlants = (): readonly Plant[] => useQuery(plantsQuery).data ?? [];
