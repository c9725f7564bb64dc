/** What the forms need of a plant and a part, read whole. */
import { queryOptions } from '@tanstack/react-query';
import { masterData } from '#contracts/master-data.ts';
import { call } from '#web/ui/http.ts';
import { lookupKeys } from '#web/ui/lookup.ts';

const longEnough = 5 * 60_000;

/** The plant's own stages in their order; empty where it has none of its own. */
export const stagesQuery = (plantId: string) =>
  queryOptions({
    queryKey: lookupKeys.list('stages', { plant: plantId }),
    queryFn: async ({ signal }) => {
      const { items } = await call(masterData.stages.list, { query: { plant: [plantId], limit: 200 }, signal });
      return items.toSorted((a, b) => a.position - b.position);
    },
    staleTime: longEnough,
  });

export const linesQuery = (plantId: string) =>
  queryOptions({
    queryKey: lookupKeys.list('lines', { plant: plantId, all: true }),
    queryFn: async ({ signal }) =>
      (await call(masterData.lines.list, { query: { plant: [plantId], limit: 200 }, signal })).items,
    staleTime: longEnough,
  });

export const housingQuery = (id: string) =>
  queryOptions({
    queryKey: lookupKeys.one('housing-face', id),
    queryFn: ({ signal }) => call(masterData.housings.read, { params: { id }, signal }),
    staleTime: longEnough,
  });

/** Housings with their faces; the whole of the first two hundred is kept for work without a network. */
export const housingsQuery = (q: string) =>
  queryOptions({
    queryKey: lookupKeys.list('housing-faces', { q }),
    queryFn: async ({ signal }) =>
      (await call(masterData.housings.list, { query: { limit: 200, ...(q && { q }) }, signal })).items,
    staleTime: longEnough,
  });
