/** Import of files: upload, what the columns mean, unknown values, dry run, commit. */
import { z } from 'zod';
import { fieldNames } from './import-fields.ts';
import { endpoint } from './shared/endpoint.ts';
import { PageQuery, page } from './shared/paging.ts';
import { Id, IdParams, Instant, Name, Version } from './shared/scalars.ts';
import { ImportKind } from './taxonomy.ts';

const tag = 'imports';
export const importStates = [
  'uploaded',
  'checking',
  'checked',
  'committing',
  'committed',
  'cancelled',
  'failed',
  'interrupted',
] as const;
export const ImportState = z.enum(importStates);
export type ImportState = z.infer<typeof ImportState>;
export const Field = z.enum(fieldNames);

export const encodings = ['utf-8', 'utf-16le', 'utf-16be', 'windows-1252'] as const;
export const dateOrders = ['ymd', 'dmy', 'mdy'] as const;
export const decimalMarks = ['point', 'comma'] as const;
/** What to do with rows of one file that name the same day, line, housing and terminal. */
export const sameKeyAnswers = ['add_up', 'refuse'] as const;

export const refusalCodes = [
  'missing',
  'not_a_number',
  'not_whole',
  'too_small',
  'too_large',
  'too_precise',
  'not_a_date',
  'in_future',
  'year_out_of_range',
  'unknown_value',
  'too_many_values',
  'too_long',
  'bad_character',
  'broken_quote',
  'found_above_inspected',
  'built_after_found',
  'origin_after_found',
  'sub_cause_unfit',
  'amount_without_category',
  'amount_twice',
  'no_exchange_rate',
  'not_a_currency',
  'repeated_reference',
  'repeated_key',
  'voided_report',
  'not_a_finding',
  'unknown_report',
  'repeated_finding',
  'sample_differs',
] as const;
export const RefusalCode = z.enum(refusalCodes);
export type RefusalCode = z.infer<typeof RefusalCode>;

/** Why a whole file cannot be read. */
export const fileFaultCodes = [
  'empty',
  'not_text',
  'old_workbook',
  'open_quote',
  'wide',
  'long_value',
  'broken_workbook',
  'no_sheet',
  'oversize_workbook',
] as const;
/** Why a check or an import ended without its work done; nothing of it stays. */
export const troubleCodes = [
  ...fileFaultCodes,
  'stopped',
  'interrupted',
  'rows_refused',
  'conflict',
  'internal',
] as const;
export const Trouble = z.object({
  code: z.enum(troubleCodes),
  place: z.string().nullable().describe('where in the file, or the id under which the fault is logged'),
});
export type Trouble = z.infer<typeof Trouble>;

export const Layout = z.discriminatedUnion('format', [
  z.object({
    format: z.literal('csv'),
    encoding: z.enum(encodings),
    delimiter: z
      .string()
      .length(1)
      .refine((it) => !'"\r\n'.includes(it), 'must not be a quote or a line end'),
  }),
  z.object({ format: z.literal('xlsx'), sheets: z.array(z.string()), sheet: z.string().max(100) }),
]);
export type Layout = z.infer<typeof Layout>;

export const Column = z.object({
  header: z.string(),
  samples: z.array(z.string()).describe('the first different values'),
  suggestion: Field.nullable(),
});
export type Column = z.infer<typeof Column>;

const perField = <Value extends z.ZodType>(value: Value) => z.partialRecord(Field, value);
export const Mapping = z.object({
  columns: z.array(Field.nullable()).max(500).describe('the field of each column, null where the column is left out'),
  fixed: perField(z.string().trim().min(1).max(200))
    .default({})
    .describe('values for fields that the file has no column for'),
  dateOrder: perField(z.enum(dateOrders)).default({}).describe('answers to asked orders of day, month, year'),
  decimalMark: perField(z.enum(decimalMarks)).default({}).describe('answers to asked decimal marks'),
  sameKey: z.enum(sameKeyAnswers).nullable().default(null).describe('production only'),
});
export type Mapping = z.output<typeof Mapping>;

export const Question = z.discriminatedUnion('about', [
  z.object({
    about: z.literal('dateOrder'),
    field: Field,
    choices: z.array(z.enum(dateOrders)),
    example: z.string().nullable(),
  }),
  z.object({
    about: z.literal('decimalMark'),
    field: Field,
    choices: z.array(z.enum(decimalMarks)),
    example: z.string().nullable(),
  }),
  z.object({ about: z.literal('sameKey'), choices: z.array(z.enum(sameKeyAnswers)), rows: z.int() }),
]);
export type Question = z.infer<typeof Question>;

export const UnknownValue = z.object({
  field: Field,
  plantId: Id.nullable().describe('where the value belongs to one plant'),
  raw: z.string(),
  rows: z.int(),
});
export type UnknownValue = z.infer<typeof UnknownValue>;

export const RefusedRow = z.object({
  line: z.int(),
  column: z.string(),
  value: z.string(),
  reason: RefusalCode,
  note: z.string().nullable(),
});
export type RefusedRow = z.infer<typeof RefusedRow>;

export const phases = ['waiting', 'scanning', 'reading', 'comparing', 'writing', 'done'] as const;
export const Progress = z.object({ phase: z.enum(phases), share: z.number().min(0).max(1), rows: z.int() });
export type Progress = z.infer<typeof Progress>;

export const Outcome = z.object({
  rows: z.int(),
  added: z.int(),
  changed: z.int(),
  skipped: z.int().describe('already here with the same content'),
  refused: z.int(),
  reasons: z.array(z.object({ reason: RefusalCode, rows: z.int() })),
  firstRefused: z.array(RefusedRow),
  plants: z.array(z.object({ plantId: Id, added: z.int(), changed: z.int(), skipped: z.int() })),
});
export type Outcome = z.infer<typeof Outcome>;

export const ImportSummary = z.object({
  id: Id,
  kind: ImportKind,
  state: ImportState,
  source: z.string(),
  fileName: z.string(),
  bytes: z.int(),
  createdBy: z.string(),
  createdAt: Instant,
  finishedAt: Instant.nullable(),
  progress: Progress,
  outcome: Outcome.pick({ rows: true, added: true, changed: true, skipped: true, refused: true }).nullable(),
  trouble: Trouble.nullable(),
  version: Version,
});
export type ImportSummary = z.infer<typeof ImportSummary>;

export const Import = ImportSummary.extend({
  layout: Layout,
  headerLine: z.int().describe('line of the row that names the columns'),
  firstLines: z
    .array(z.object({ line: z.int(), cells: z.array(z.string()) }))
    .describe('first rows of the file, to choose the header row from'),
  columns: z.array(Column),
  mapping: Mapping,
  questions: z.array(Question),
  unknown: z.array(UnknownValue),
  unknownLeftOut: z.int().describe('further unknown values that the list does not show'),
  outcome: Outcome.nullable(),
});
export type Import = z.infer<typeof Import>;

export const listImports = endpoint({
  method: 'GET',
  path: '/api/v1/imports',
  access: 'imports.read',
  tag,
  summary: 'List imports, newest first: the own ones, and everybody’s for those who read imports of all plants',
  query: PageQuery.extend({ kind: ImportKind.optional() }),
  response: page(ImportSummary),
});
export const uploadImport = endpoint({
  method: 'POST',
  path: '/api/v1/imports',
  access: 'imports.run',
  tag,
  write: 'create',
  status: 201,
  summary: 'Upload a CSV or XLSX file of at most 2 GiB, form field `file`; nothing is imported yet',
  query: z.object({
    kind: ImportKind,
    source: Name.describe('where such files come from; mappings are kept under it'),
  }),
  response: Import,
  media: { request: 'multipart/form-data' },
});
export const readImport = endpoint({
  method: 'GET',
  path: '/api/v1/imports/:id',
  access: 'imports.read',
  tag,
  summary: 'Read one import with its progress',
  params: IdParams,
  response: Import,
});
export const changeLayout = endpoint({
  method: 'PUT',
  path: '/api/v1/imports/:id/layout',
  access: 'imports.run',
  tag,
  write: 'update',
  summary: 'Correct what was found out about the file: encoding, delimiter, sheet, header row',
  params: IdParams,
  body: z.object({
    layout: Layout,
    headerLine: z.int().min(1).max(10_000_000).nullable().default(null).describe('null: find it'),
  }),
  response: Import,
});
export const changeMapping = endpoint({
  method: 'PUT',
  path: '/api/v1/imports/:id/mapping',
  access: 'imports.run',
  tag,
  write: 'update',
  summary: 'Say what the columns mean and answer the questions; kept for the next file of the same source',
  params: IdParams,
  body: Mapping,
  response: Import,
});
const known = { field: Field, plantId: Id.nullable().default(null), raw: z.string().min(1).max(200) };
export const ValueMeaning = z.discriminatedUnion('as', [
  z.object({
    ...known,
    as: z.literal('existing'),
    target: z.string().min(1).max(80).describe('id of the master data, or word of the vocabulary'),
  }),
  z.object({ ...known, as: z.literal('blank') }),
  z.object({
    ...known,
    as: z.literal('new'),
    input: z.record(z.string(), z.unknown()).describe('as for creating that kind of master data'),
  }),
]);
export type ValueMeaning = z.output<typeof ValueMeaning>;
export const defineValues = endpoint({
  method: 'PUT',
  path: '/api/v1/imports/:id/values',
  access: 'imports.run',
  tag,
  write: 'update',
  summary: 'Say what unknown values mean: something that exists, nothing, or master data made now; all or none',
  params: IdParams,
  body: z.object({ values: z.array(ValueMeaning).min(1).max(500) }),
  response: Import,
});
export const checkImport = endpoint({
  method: 'POST',
  path: '/api/v1/imports/:id/check',
  access: 'imports.run',
  tag,
  write: 'update',
  status: 202,
  summary: 'Dry run: reads the whole file and tells what would be added, changed, skipped and refused',
  params: IdParams,
  response: Import,
});
export const commitImport = endpoint({
  method: 'POST',
  path: '/api/v1/imports/:id/commit',
  access: 'imports.run',
  tag,
  write: 'update',
  status: 202,
  summary: 'Import the file: all rows or none, unless refused rows are to be left out',
  params: IdParams,
  body: z.object({ skipRefused: z.boolean().default(false) }),
  response: Import,
});
export const cancelImport = endpoint({
  method: 'POST',
  path: '/api/v1/imports/:id/cancel',
  access: 'imports.run',
  tag,
  summary: 'Stop a running check or import, or give up a file; nothing of it stays',
  params: IdParams,
  response: Import,
});
export const readRefused = endpoint({
  method: 'GET',
  path: '/api/v1/imports/:id/refused',
  access: 'imports.read',
  tag,
  summary: 'Refused rows as CSV: line, column, value, reason; formulas are made harmless',
  params: IdParams,
  media: { response: 'text/csv' },
});
