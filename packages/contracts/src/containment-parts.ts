/** Parts of a containment: places, sorting results, the suspect population, plants told. */
import { z } from 'zod';
import { Day, Id, Instant } from './shared/scalars.ts';

/** Where suspect parts can be, in the order in which they left the plant. */
export const places = ['in_process', 'stock', 'transit', 'customer', 'field'] as const;
export const Place = z.enum(places);
export type Place = z.infer<typeof Place>;

/** What may be wrong with the parts that were not inspected, after a random sample. */
export const SampleLimit = z.object({
  fraction: z.number().describe('at most this fraction of all is nonconforming, 0 to 1'),
  items: z.int().nullable().describe('at most this many of the parts there, those found included'),
  confidence: z.number(),
});
export const PlaceState = z.object({
  place: Place,
  quantity: z.int().nullable().describe('null: nobody has stated how many are there'),
  note: z.string().nullable(),
  statedAt: Instant.nullable(),
  inspected: z.int(),
  found: z.int(),
  sampled: z.boolean().describe('some of it was a sample'),
  left: z.int().nullable().describe('stated there and not yet inspected'),
  limit: SampleLimit.nullable().describe('null where nothing was inspected, or everything'),
});
export type PlaceState = z.infer<typeof PlaceState>;

export const SortingResult = z.object({
  id: Id,
  place: Place,
  day: Day,
  inspected: z.int(),
  found: z.int(),
  sample: z.boolean(),
  note: z.string().nullable(),
  failureId: Id.nullable(),
  failureNumber: z.string().nullable(),
  by: z.string(),
  at: Instant,
  withdrawnAt: Instant.nullable(),
  withdrawReason: z.string().nullable(),
});
export const sharedThings = ['lot', 'tool', 'part'] as const;
export const PlantTold = z.object({
  plantId: Id,
  plantCode: z.string(),
  shares: z.array(z.enum(sharedThings)),
  toldAt: Instant,
  seenAt: Instant.nullable(),
  affected: z.boolean().nullable(),
  answer: z.string().nullable(),
  answeredAt: Instant.nullable(),
});

export const Population = z.object({
  units: z.int().nullable().describe('units built in the scope; null where no production was reported'),
  terminals: z.int().nullable(),
  narrower: z.boolean().describe('a lot or a tool narrows it further than production is counted: an upper limit'),
  suspect: z.int().nullable().describe('the number stated, else the units built'),
  stated: z.int().describe('accounted for by place'),
  unaccounted: z.int().nullable(),
  reports: z.int().describe('failure reports in the scope'),
  reportedTerminals: z.int(),
});
export type Population = z.infer<typeof Population>;
