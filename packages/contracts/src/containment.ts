/** Containment: the suspect population, where it is, sorting and its results, the clean point, and what other plants are told. */
import { z } from 'zod';
import {
  Place,
  PlaceState,
  PlantTold,
  Population,
  places,
  SampleLimit,
  SortingResult,
  sharedThings,
} from './containment-parts.ts';
import { endpoint } from './shared/endpoint.ts';
import { PageQuery, page } from './shared/paging.ts';
import { Day, Id, IdParams, Instant, Mark, many, Version } from './shared/scalars.ts';

const tag = 'containment';
const optional = <Item extends z.ZodType>(item: Item) => item.nullable().default(null);
const Reason = z.string().trim().min(3).max(1000);
const Count = z.int().min(1).max(2_000_000_000);
const ids = z.array(Id).max(50).default([]);
const lots = z.array(Mark).max(200).default([]);

const ContainmentFields = z.object({
  plantId: Id,
  complaintId: optional(Id),
  caseId: optional(Id).describe('8D case'),
  title: z.string().trim().min(3).max(200),
  ownerId: optional(Id).describe('null: whoever records it'),
  housingIds: ids,
  terminalIds: ids,
  lineIds: ids,
  toolIds: ids,
  reelLots: lots,
  housingLots: lots,
  builtFrom: Day,
  builtTo: Day.describe('the day after the last one'),
  suspectQuantity: optional(Count).describe('parts suspect, where it is known better than by what was built'),
  suspectBasis: optional(Reason).describe('how that number is known'),
});
export const ContainmentInput = ContainmentFields.refine((it) => it.builtFrom < it.builtTo, {
  path: ['builtTo'],
  message: 'must be after the first day built',
})
  .refine(
    (it) =>
      [it.housingIds, it.terminalIds, it.lineIds, it.toolIds, it.reelLots, it.housingLots].some((all) => all.length),
    { path: ['housingIds'], message: 'must name at least a part, a line, a tool or a lot' },
  )
  .refine((it) => (it.suspectQuantity === null) === (it.suspectBasis === null), {
    path: ['suspectBasis'],
    message: 'must come with the number, and the number with it',
  });
export type ContainmentInput = z.output<typeof ContainmentInput>;

export const Containment = ContainmentFields.extend({
  id: Id,
  number: z.string(),
  plantCode: z.string(),
  ownerId: Id,
  ownerName: z.string(),
  complaintNumber: z.string().nullable(),
  names: z.record(z.string(), z.string()).describe('codes of the parts, lines and tools, by id'),
  cleanFrom: Day.nullable(),
  cleanSerial: z.string().nullable(),
  cleanLot: z.string().nullable(),
  cleanReason: z.string().nullable(),
  cleanBy: z.string().nullable(),
  cleanAt: Instant.nullable(),
  createdAt: Instant,
  closedAt: Instant.nullable(),
  closedBy: z.string().nullable(),
  closingNote: z.string().nullable(),
  population: Population,
  places: z.array(PlaceState),
  sortings: z.array(SortingResult),
  plants: z.array(PlantTold),
  version: Version,
});
export type Containment = z.infer<typeof Containment>;

export const ContainmentLine = z.object({
  id: Id,
  number: z.string(),
  plantId: Id,
  plantCode: z.string(),
  title: z.string(),
  complaintId: Id.nullable(),
  complaintNumber: z.string().nullable(),
  ownerName: z.string(),
  builtFrom: Day,
  builtTo: Day,
  inspected: z.int(),
  found: z.int(),
  stated: z.int(),
  clean: z.boolean(),
  createdAt: Instant,
  closedAt: Instant.nullable(),
});
export type ContainmentLine = z.infer<typeof ContainmentLine>;
export const listContainments = endpoint({
  method: 'GET',
  path: '/api/v1/containment',
  access: 'containment.read',
  tag,
  summary: 'List containments, newest first',
  query: PageQuery.extend({
    plant: many(Id).optional(),
    state: z.enum(['open', 'closed', 'all']).default('open'),
    complaint: Id.optional(),
    case: Id.optional(),
    q: z.string().trim().min(1).max(200).optional(),
  }),
  response: page(ContainmentLine),
});
export const readContainment = endpoint({
  method: 'GET',
  path: '/api/v1/containment/:id',
  access: 'containment.read',
  tag,
  summary: 'One containment with its population, places, sorting and plants told',
  params: IdParams,
  response: Containment,
});
export const createContainment = endpoint({
  method: 'POST',
  path: '/api/v1/containment',
  access: 'containment.write',
  tag,
  summary: 'Open a containment; plants that share the lot, the tool or the part are told',
  write: 'create',
  status: 201,
  body: ContainmentInput,
  response: Containment,
});
export const updateContainment = endpoint({
  method: 'PUT',
  path: '/api/v1/containment/:id',
  access: 'containment.write',
  tag,
  summary: 'Change what is suspect',
  write: 'update',
  params: IdParams,
  body: ContainmentInput,
  response: Containment,
});
const act = <Body extends z.ZodType>(step: string, summary: string, body: Body) =>
  endpoint({
    method: 'PUT',
    path: `/api/v1/containment/:id/${step}`,
    access: 'containment.write',
    tag,
    summary,
    write: 'update',
    params: IdParams,
    body,
    response: Containment,
  });
export const statePlaces = act(
  'places',
  'Say how many suspect parts are where',
  z.object({
    places: z
      .array(
        z.object({
          place: Place,
          quantity: z.int().min(0).max(2_000_000_000).nullable().describe('null: not known'),
          note: optional(z.string().trim().max(500)),
        }),
      )
      .min(1)
      .max(places.length)
      .refine((all) => new Set(all.map(({ place }) => place)).size === all.length, 'must name each place once'),
  }),
);
export const setCleanPoint = act(
  'clean-point',
  'Say from which day, serial or lot on parts are good, and why',
  z
    .object({ from: optional(Day), serial: optional(Mark), lot: optional(Mark), reason: Reason })
    .refine((it) => it.from !== null || it.serial !== null || it.lot !== null, {
      path: ['from'],
      message: 'must be a day, a serial or a lot',
    }),
);
export const closeContainment = act('closed', 'Close it: all parts accounted for', z.object({ note: Reason }));
export const reopenContainment = act('reopened', 'Open it again', z.object({ reason: Reason }));
export const addSorting = endpoint({
  method: 'POST',
  path: '/api/v1/containment/:id/sortings',
  access: 'containment.write',
  tag,
  summary: 'Record a sorting result; what was found becomes a failure report, once',
  write: 'create',
  params: IdParams,
  body: z
    .object({
      place: Place,
      day: Day,
      inspected: Count,
      found: z.int().min(0).max(2_000_000_000),
      sample: z.boolean().describe('a random sample, not every part'),
      note: optional(z.string().trim().max(2000)),
      report: z.boolean().default(true).describe('make a failure report of what was found'),
    })
    .refine((it) => it.found <= it.inspected, { path: ['found'], message: 'must not be above the number inspected' }),
  response: Containment,
});
export const withdrawSorting = endpoint({
  method: 'PUT',
  path: '/api/v1/containment/:id/sortings/:sortingId/withdrawn',
  access: 'containment.write',
  tag,
  summary: 'Withdraw a sorting result entered by mistake; its failure report is voided by a manager apart',
  write: 'update',
  params: IdParams.extend({ sortingId: Id }),
  body: z.object({ reason: Reason }),
  response: Containment,
});

export const inspectionLevels = ['S-1', 'S-2', 'S-3', 'S-4', 'I', 'II', 'III'] as const;
export const acceptanceLimits = [
  '0.01',
  '0.015',
  '0.025',
  '0.04',
  '0.065',
  '0.1',
  '0.15',
  '0.25',
  '0.4',
  '0.65',
  '1',
  '1.5',
  '2.5',
  '4',
  '6.5',
  '10',
] as const;
export const SamplePlan = z.object({
  codeLetter: z.string(),
  planLetter: z.string(),
  sampleSize: z.int(),
  accept: z.int(),
  reject: z.int(),
  everyItem: z.boolean(),
  passes: z
    .array(z.object({ fraction: z.number(), probability: z.number() }))
    .describe('chance that a lot with this fraction nonconforming passes the plan'),
  afterZero: SampleLimit.describe('what a sample of this size with none found does not exclude'),
  toShow: z
    .array(z.object({ fraction: z.number(), sampleSize: z.int() }))
    .describe('parts to inspect with none found to show that at most this fraction is nonconforming, at 95 %'),
});
export type SamplePlan = z.infer<typeof SamplePlan>;
export const planSample = endpoint({
  method: 'GET',
  path: '/api/v1/containment/sample-plan',
  access: 'containment.read',
  tag,
  summary: 'Single sampling plan of ISO 2859-1 (normal inspection) and what a clean sample does not exclude',
  query: z.object({
    lot: z.coerce.number().int().min(2).max(100_000_000).describe('parts there'),
    limit: z.enum(acceptanceLimits).default('0.65').describe('acceptance quality limit, per cent nonconforming'),
    level: z.enum(inspectionLevels).default('II'),
  }),
  response: SamplePlan,
});

/** What another plant is told: what it shares, never the customer, the complaint or the numbers of the plant that asks. */
export const Alert = z.object({
  id: Id,
  plantId: Id,
  plantCode: z.string(),
  from: z.string().describe('code of the plant that asks'),
  number: z.string(),
  shares: z.array(z.enum(sharedThings)),
  parts: z.array(z.string()),
  lots: z.array(z.string()),
  toolTypes: z.array(z.string()),
  builtFrom: Day,
  builtTo: Day,
  ownReports: z.int().describe('failure reports of your plant in this scope'),
  toldAt: Instant,
  seenAt: Instant.nullable(),
  affected: z.boolean().nullable(),
  answer: z.string().nullable(),
  answeredBy: z.string().nullable(),
  answeredAt: Instant.nullable(),
  open: z.boolean().describe('the containment is open'),
  version: Version,
});
export type Alert = z.infer<typeof Alert>;
export const listAlerts = endpoint({
  method: 'GET',
  path: '/api/v1/containment/alerts',
  access: 'containment.read',
  tag,
  summary: 'What other plants hold back that yours shares, newest first',
  query: PageQuery.extend({ plant: many(Id).optional(), state: z.enum(['waiting', 'all']).default('waiting') }),
  response: page(Alert),
});
export const answerAlert = endpoint({
  method: 'PUT',
  path: '/api/v1/containment/alerts/:id',
  access: 'containment.write',
  tag,
  summary: 'Say whether your plant is affected, and why or what you do',
  write: 'update',
  params: IdParams,
  body: z.object({ affected: z.boolean(), answer: Reason }),
  response: Alert,
});
