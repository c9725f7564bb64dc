/** Failure reports: one terminal failure, or several of the same kind found together. */
import { z } from 'zod';
import { endpoint } from './shared/endpoint.ts';
import { Filter } from './shared/filter.ts';
import { PageQuery, page } from './shared/paging.ts';
import { Currency, Day, Id, IdParams, Instant, Mark, MinorUnits, Note, Version } from './shared/scalars.ts';
import {
  Cause,
  CostBasis,
  CostCategory,
  causeTaxonomy,
  Disposition,
  Effect,
  LockState,
  Source,
  Stage,
  stageNumber,
} from './taxonomy.ts';

const tag = 'failures';
const optional = <Item extends z.ZodType>(item: Item) => item.nullable().default(null);
const Count = z.int().min(1).max(2_000_000_000);
export const SubCause = z.string().max(60);

const ReportFields = z.object({
  plantId: Id,
  externalRef: optional(Mark).describe('the sender’s own number; unique in the plant'),
  foundOn: Day.describe('day found, plant time'),
  foundAt: optional(Instant),
  builtOn: optional(Day),
  lineId: optional(Id),
  station: optional(Mark),
  shift: optional(Mark),
  stageId: optional(Id).describe('the plant’s own stage; sets `found`'),
  found: Stage.describe('common stage that found it'),
  source: Source,
  housingId: optional(Id),
  terminalId: optional(Id),
  wireId: optional(Id),
  toolIds: z.array(Id).max(20).default([]).describe('tools involved; the first is the one counted'),
  fixturePosition: optional(Mark),
  cavities: z.array(Mark).max(200).default([]),
  reelLot: optional(Mark),
  housingLot: optional(Mark),
  serialFrom: optional(Mark),
  serialTo: optional(Mark),
  customerId: optional(Id),
  customerRef: optional(Mark),
  effect: optional(Effect),
  quantityFound: Count,
  quantityInspected: optional(Count),
  lockState: LockState.default('unknown'),
  disposition: Disposition.default('pending'),
  safety: z.boolean().default(false).describe('set by itself where the housing is safety-relevant'),
  note: optional(Note),
});

export const Sorting = z
  .object({
    cause: Cause,
    subCause: optional(SubCause),
    origin: optional(Stage),
    proof: optional(Note),
    reason: optional(Note).describe('why it changes'),
  })
  .refine((it) => it.subCause === null || causeTaxonomy[it.cause].subCauses.includes(it.subCause), {
    path: ['subCause'],
    message: 'must be a sub-cause of the cause',
  });

const consistent = <Schema extends z.ZodType<z.infer<typeof ReportFields>, unknown>>(schema: Schema) =>
  schema
    .refine((it) => it.quantityInspected === null || it.quantityInspected >= it.quantityFound, {
      path: ['quantityInspected'],
      message: 'must not be below the quantity found',
    })
    .refine((it) => it.builtOn === null || it.builtOn <= it.foundOn, {
      path: ['builtOn'],
      message: 'must not be after the day found',
    });

export const ReportInput = consistent(ReportFields);
export type ReportInput = z.output<typeof ReportInput>;

export const NewReport = consistent(
  ReportFields.extend({
    id: Id.optional().describe('made by the sender so that a repeated send adds nothing; UUID version 7'),
    sorting: optional(Sorting),
  }),
).refine((it) => !it.sorting?.origin || stageNumber(it.sorting.origin) <= stageNumber(it.found), {
  path: ['sorting', 'origin'],
  message: 'must not be later than the stage that found it',
});
export type NewReport = z.output<typeof NewReport>;

export const CostItem = z.object({
  id: Id,
  category: CostCategory,
  basis: CostBasis,
  incurredOn: Day,
  amountMinor: MinorUnits,
  currency: Currency,
  plantMinor: MinorUnits.describe('in the plant currency, at the rate of `rateOn`'),
  rateOn: Day.nullable(),
  minutes: z.int().nullable(),
  note: z.string().nullable(),
});
export type CostItem = z.infer<typeof CostItem>;

export const CostItemInput = z
  .object({
    category: CostCategory,
    basis: CostBasis,
    incurredOn: Day,
    currency: Currency,
    note: optional(z.string().trim().max(500)),
    amountMinor: MinorUnits.optional(),
    minutes: z
      .int()
      .min(1)
      .max(1_000_000)
      .optional()
      .describe('instead of an amount: minutes at the plant’s rate, for labour, sorting and line stops'),
  })
  .refine((it) => (it.amountMinor === undefined) !== (it.minutes === undefined), {
    path: ['amountMinor'],
    message: 'give either an amount or minutes',
  })
  .refine((it) => it.minutes === undefined || ['rework_labour', 'sorting', 'line_stop'].includes(it.category), {
    path: ['minutes'],
    message: 'minutes are for labour, sorting and line stops',
  });

export const Photo = z.object({
  id: Id,
  width: z.int(),
  height: z.int(),
  bytes: z.int(),
  caption: z.string().nullable(),
  addedAt: Instant,
});
export type Photo = z.infer<typeof Photo>;

export const CauseChange = z.object({
  id: Id,
  at: Instant,
  actor: z.string(),
  cause: Cause.nullable(),
  subCause: z.string().nullable(),
  origin: Stage.nullable(),
  proof: z.string().nullable(),
  reason: z.string().nullable(),
});

/** Costs of one report in its plant's currency. Booked and estimated are never added up here. */
export const ReportCost = z.object({
  currency: Currency,
  bookedMinor: MinorUnits,
  estimatedMinor: MinorUnits.describe('cost items marked as estimates'),
  standardMinor: MinorUnits.nullable().describe(
    'standard cost, which stands in as the estimate where the report has no cost item; null where it has one',
  ),
});

/** A line of the list. Names of parts and people are looked up by the server so that a list needs one call. */
export const ReportRow = z.object({
  id: Id,
  plantId: Id,
  plantCode: z.string(),
  number: z.string(),
  foundOn: Day,
  reportedAt: Instant,
  lineCode: z.string().nullable(),
  station: z.string().nullable(),
  shift: z.string().nullable(),
  found: Stage,
  source: Source,
  housingCode: z.string().nullable(),
  terminalCode: z.string().nullable(),
  wireCode: z.string().nullable(),
  toolCode: z.string().nullable(),
  cavities: z.array(z.string()),
  reelLot: z.string().nullable(),
  housingLot: z.string().nullable(),
  customerCode: z.string().nullable(),
  effect: Effect.nullable(),
  quantityFound: z.int(),
  quantityInspected: z.int().nullable(),
  lockState: LockState,
  disposition: Disposition,
  safety: z.boolean(),
  cause: Cause.nullable(),
  subCause: z.string().nullable(),
  origin: Stage.nullable(),
  cost: ReportCost,
  photoCount: z.int(),
  note: z.string().nullable(),
});
export type ReportRow = z.infer<typeof ReportRow>;

export const Report = ReportFields.extend({
  id: Id,
  number: z.string(),
  reportedAt: Instant,
  reportedBy: z.string().nullable(),
  cause: Cause.nullable(),
  subCause: z.string().nullable(),
  origin: Stage.nullable(),
  proof: z.string().nullable(),
  sortedAt: Instant.nullable(),
  sortedBy: z.string().nullable(),
  gatesPassed: z.int().nullable(),
  cost: ReportCost,
  costItems: z.array(CostItem),
  photos: z.array(Photo),
  causeChanges: z.array(CauseChange),
  importId: Id.nullable(),
  importLine: z.int().nullable(),
  voidedAt: Instant.nullable(),
  voidReason: z.string().nullable(),
  version: Version,
});
export type Report = z.infer<typeof Report>;

export const listReports = endpoint({
  method: 'GET',
  path: '/api/v1/failures',
  access: 'failures.read',
  tag,
  summary: 'List failure reports, newest found first',
  query: Filter.extend(PageQuery.shape),
  response: page(ReportRow),
});
export const countReports = endpoint({
  method: 'GET',
  path: '/api/v1/failures/count',
  access: 'failures.read',
  tag,
  summary: 'How many reports and terminals the filter selects',
  query: Filter,
  response: z.object({ reports: z.int(), terminals: z.int() }),
});
export const exportReports = endpoint({
  method: 'GET',
  path: '/api/v1/failures/export',
  access: 'failures.read',
  tag,
  summary: 'Exactly the filtered list as CSV or XLSX; formulas are made harmless',
  query: Filter.extend({ format: z.enum(['csv', 'xlsx']) }),
  media: { response: 'text/csv, application/vnd.openxmlformats-officedocument.spreadsheetml.sheet' },
});
export const readReport = endpoint({
  method: 'GET',
  path: '/api/v1/failures/:id',
  access: 'failures.read',
  tag,
  summary: 'Read one report',
  params: IdParams,
  response: Report,
});
export const createReport = endpoint({
  method: 'POST',
  path: '/api/v1/failures',
  access: 'failures.write',
  tag,
  summary: 'Record a failure',
  write: 'create',
  status: 201,
  body: NewReport,
  response: Report,
});
export const updateReport = endpoint({
  method: 'PUT',
  path: '/api/v1/failures/:id',
  access: 'failures.write',
  tag,
  summary: 'Correct a report',
  write: 'update',
  params: IdParams,
  body: ReportInput,
  response: Report,
});
export const sortReport = endpoint({
  method: 'PUT',
  path: '/api/v1/failures/:id/cause',
  access: 'failures.sort',
  tag,
  summary: 'Sort a report into a cause; every change is kept',
  write: 'update',
  params: IdParams,
  body: Sorting,
  response: Report,
});
export const voidReport = endpoint({
  method: 'PUT',
  path: '/api/v1/failures/:id/void',
  access: 'failures.void',
  tag,
  summary: 'Take a mistaken report out of every count; it stays readable',
  write: 'update',
  params: IdParams,
  body: z.object({ reason: z.string().trim().min(3).max(500) }),
  response: Report,
});
export const addCost = endpoint({
  method: 'POST',
  path: '/api/v1/failures/:id/costs',
  access: 'failures.write',
  tag,
  summary: 'Add a cost item',
  write: 'create',
  status: 201,
  params: IdParams,
  body: CostItemInput,
  response: Report,
});
export const removeCost = endpoint({
  method: 'DELETE',
  path: '/api/v1/failures/:id/costs/:costId',
  access: 'failures.write',
  tag,
  summary: 'Remove a cost item',
  params: IdParams.extend({ costId: Id }),
  response: Report,
});
export const addPhoto = endpoint({
  method: 'POST',
  path: '/api/v1/failures/:id/photos',
  access: 'failures.write',
  tag,
  summary: 'Add a photo (JPEG, PNG, WebP, HEIC where the server can read it; at most 15 MB), form field `photo`',
  write: 'create',
  status: 201,
  params: IdParams,
  response: Photo,
  media: { request: 'multipart/form-data' },
});
export const readPhoto = endpoint({
  method: 'GET',
  path: '/api/v1/photos/:id',
  access: 'failures.read',
  tag,
  summary: 'The photo; `size=small` for a thumbnail',
  params: IdParams,
  query: z.object({ size: z.enum(['full', 'small']).default('full') }),
  media: { response: 'image/jpeg' },
});
export const removePhoto = endpoint({
  method: 'DELETE',
  path: '/api/v1/photos/:id',
  access: 'failures.write',
  tag,
  summary: 'Remove a photo',
  params: IdParams,
  status: 204,
});

/** What the form needs to offer marks used before: stations, shifts, lots of a plant and line. */
export const suggestMarks = endpoint({
  method: 'GET',
  path: '/api/v1/failures/marks',
  access: 'failures.read',
  tag,
  summary: 'Marks used lately in a plant',
  query: z.object({
    plantId: Id,
    lineId: Id.optional(),
    field: z.enum(['station', 'shift', 'reelLot', 'housingLot', 'fixturePosition']),
    q: z.string().max(80).optional(),
  }),
  response: z.object({ items: z.array(z.string()) }),
});

export const cavityCounts = endpoint({
  method: 'GET',
  path: '/api/v1/failures/cavities',
  access: 'failures.read',
  tag,
  summary: 'Failures per cavity of one housing; a report naming several cavities counts on each of them',
  query: Filter.extend({
    housing: z.union([Id, z.array(Id).length(1)]).transform((it) => (Array.isArray(it) ? it : [it])),
  }),
  response: z.object({
    reports: z.int(),
    withoutCavity: z.int(),
    cavities: z.array(z.object({ cavity: z.string(), reports: z.int() })),
  }),
});

export const SavedFilter = z.object({ id: Id, page: z.string(), name: z.string(), query: z.string() });
export const listSavedFilters = endpoint({
  method: 'GET',
  path: '/api/v1/saved-filters',
  access: 'signed-in',
  tag,
  summary: 'The own saved filters',
  response: z.object({ items: z.array(SavedFilter) }),
});
export const saveFilter = endpoint({
  method: 'POST',
  path: '/api/v1/saved-filters',
  access: 'signed-in',
  tag,
  summary: 'Save a filter under a name; the same name is replaced',
  status: 201,
  body: z.object({ page: z.string().max(40), name: z.string().trim().min(1).max(60), query: z.string().max(4000) }),
  response: SavedFilter,
});
export const deleteSavedFilter = endpoint({
  method: 'DELETE',
  path: '/api/v1/saved-filters/:id',
  access: 'signed-in',
  tag,
  summary: 'Remove a saved filter',
  params: IdParams,
  status: 204,
});
