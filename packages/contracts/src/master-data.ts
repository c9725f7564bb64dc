/** Plants and what belongs to them, parts, customers, and money tables. Nothing is deleted; a row is retired and can be brought back. */
import { z } from 'zod';
import { gridCavities } from './cavities.ts';
import type { Permission } from './permissions.ts';
import { ReplyTimes, usualReplyTimes } from './reply-times.ts';
import { endpoint } from './shared/endpoint.ts';
import { PageQuery, page } from './shared/paging.ts';
import {
  Code,
  Currency,
  Day,
  Id,
  IdParams,
  Instant,
  Locale,
  Mark,
  many,
  Name,
  Paper,
  TimeZone,
  Version,
} from './shared/scalars.ts';
import { CostRateKind, Disposition, RetentionStyle, SecondaryLockKind, Stage, ToolKind } from './taxonomy.ts';

const tag = 'master data';
const row = { id: Id, version: Version, retiredAt: Instant.nullable() };
const Minor = z.int().min(0).max(1_000_000_000_000);
const Cycles = z.int().min(0).max(1_000_000_000_000);
const decimals = (digits: number) => (value: number) =>
  Math.abs(value * 10 ** digits - Math.round(value * 10 ** digits)) < 1e-6;
/** Cross-section in mm². */
const SquareMillimetres = z.number().min(0.0001).max(1000).refine(decimals(4), 'takes at most four decimals');

interface Kind {
  /** Name of one row in the audit trail. */
  entity: string;
  write: Permission;
  /** Rows of a plant are seen and changed with a role at that plant; rows of the group belong to all. */
  scope: 'plant' | 'group';
  /** False where a row has no text to search in. */
  searchable?: boolean;
}

/** The five operations every kind of master data has. */
const resource = <Input extends z.ZodObject, Row extends z.ZodObject>(
  name: string,
  { entity, write, scope, searchable = true }: Kind,
  Input: Input,
  Row: Row,
) => {
  const path = `/api/v1/${name}` as const;
  return {
    name,
    entity,
    scope,
    write,
    Input,
    Row,
    list: endpoint({
      method: 'GET',
      path,
      access: 'masterData.read',
      tag,
      summary: `List ${name}`,
      query: PageQuery.extend({
        retired: z.stringbool().default(false).describe('show retired rows too'),
        q: (searchable ? z.string().trim().max(100) : z.never('has no text to search in')).optional(),
        due: (entity === 'tool' ? z.stringbool() : z.never('is for tools'))
          .optional()
          .describe('service interval run out'),
        plant: (scope === 'plant' ? many(Id) : z.never('belongs to the group, not to a plant')).optional(),
      }),
      response: page(Row),
    }),
    read: endpoint({
      method: 'GET',
      path: `${path}/:id`,
      access: 'masterData.read',
      tag,
      summary: `Read one of ${name}`,
      params: IdParams,
      response: Row,
    }),
    create: endpoint({
      method: 'POST',
      path,
      access: write,
      tag,
      summary: `Add to ${name}`,
      write: 'create',
      status: 201,
      body: Input,
      response: Row,
    }),
    update: endpoint({
      method: 'PUT',
      path: `${path}/:id`,
      access: write,
      tag,
      summary: `Change one of ${name}`,
      write: 'update',
      params: IdParams,
      body: Input,
      response: Row,
    }),
    retire: endpoint({
      method: 'PUT',
      path: `${path}/:id/retired`,
      access: write,
      tag,
      summary: `Retire or bring back one of ${name}`,
      write: 'update',
      params: IdParams,
      body: z.object({ retired: z.boolean() }),
      response: Row,
    }),
  };
};
const table = <Shape extends z.ZodRawShape>(name: string, kind: Kind, shape: Shape, check?: Check<Shape>) => {
  const plain = z.object(shape);
  return resource(name, kind, check ? check(plain) : plain, plain.extend(row));
};
type Check<Shape extends z.ZodRawShape> = (input: z.ZodObject<Shape>) => z.ZodObject<Shape>;

const ofPlant = (entity: string, searchable = true): Kind => ({
  entity,
  write: 'plantData.write',
  scope: 'plant',
  searchable,
});
const ofGroup = (entity: string): Kind => ({ entity, write: 'groupData.write', scope: 'group' });

export const plants = table(
  'plants',
  { entity: 'plant', write: 'groupData.write', scope: 'plant' },
  {
    code: Code,
    name: Name,
    zone: TimeZone,
    currency: Currency,
    weekStart: z.int().min(1).max(7).default(1).describe('first day of the reporting week, 1 = Monday … 7 = Sunday'),
    locale: Locale.default('en'),
    paper: Paper.default('A4').describe('what the weekly review is printed on'),
  },
);
export const lines = table('lines', ofPlant('line'), { plantId: Id, code: Code, name: Name });
export const plantStages = table('stages', ofPlant('stage'), {
  plantId: Id,
  code: Code,
  name: Name,
  common: Stage.describe('the common stage it stands for'),
  position: z.int().min(1).max(200),
});
const Rows = z.int().min(1).max(40);
const Columns = z.int().min(1).max(60);
const isGrid = (it: { rows: unknown; columns: unknown }): boolean =>
  Rows.safeParse(it.rows).success && Columns.safeParse(it.columns).success;
export const housings = table(
  'housings',
  ofGroup('housing'),
  {
    code: Code,
    name: Name,
    rows: Rows,
    columns: Columns,
    missingCavities: z
      .array(Mark)
      .max(2400)
      .default([])
      .describe('cavities of the grid that the face does not have, such as B3'),
    retentionStyle: RetentionStyle,
    secondaryLock: SecondaryLockKind,
    safetyRelevant: z.boolean().default(false),
  },
  (input) =>
    input
      .refine((it) => !isGrid(it) || new Set(gridCavities(it)).isSupersetOf(new Set(it.missingCavities)), {
        path: ['missingCavities'],
        message: 'must be cavities of the grid, such as B3',
      })
      .refine((it) => new Set(it.missingCavities).size < it.rows * it.columns, {
        path: ['missingCavities'],
        message: 'must leave at least one cavity',
      }),
);
export const terminals = table(
  'terminals',
  ofGroup('terminal'),
  {
    code: Code,
    name: Name,
    wireMinMm2: SquareMillimetres,
    wireMaxMm2: SquareMillimetres,
    minRetentionN: z
      .number()
      .min(0.01)
      .max(100_000)
      .refine(decimals(2), 'takes at most two decimals')
      .nullable()
      .default(null)
      .describe('minimum retention force, N'),
    approvedToolTypes: z.array(Mark).max(100).default([]),
  },
  (input) =>
    input.refine((it) => it.wireMaxMm2 >= it.wireMinMm2, {
      path: ['wireMaxMm2'],
      message: 'must not be below the smallest wire',
    }),
);
export const wires = table('wires', ofGroup('wire'), {
  code: Code,
  name: Name,
  sectionMm2: SquareMillimetres,
  insulationMm: z
    .number()
    .min(0.001)
    .max(100)
    .refine(decimals(3), 'takes at most three decimals')
    .nullable()
    .default(null)
    .describe('outer diameter of the insulation, mm'),
});
export const tools = table(
  'tools',
  ofPlant('tool'),
  {
    plantId: Id,
    code: Code,
    name: Name,
    kind: ToolKind,
    type: Mark.nullable().default(null).describe('the type an approval names'),
    cycleCount: Cycles.default(0),
    serviceInterval: Cycles.min(1).nullable().default(null),
    servicedAtCount: Cycles.default(0),
    servicedOn: Day.nullable().default(null),
  },
  (input) =>
    input.refine((it) => it.servicedAtCount <= it.cycleCount, {
      path: ['servicedAtCount'],
      message: 'must not be above the cycles counted so far',
    }),
);
export const customers = table('customers', ofGroup('customer'), {
  code: Code,
  name: Name,
  locale: Locale.default('en').describe('of the documents it gets'),
  paper: Paper.default('A4').describe('of the documents it gets'),
  replyTimes: ReplyTimes.default(usualReplyTimes).describe(
    'how long each reply may take, in working time of the plant',
  ),
});
export const costRates = table('cost-rates', ofPlant('cost_rate', false), {
  plantId: Id,
  kind: CostRateKind,
  validFrom: Day,
  hourlyMinor: Minor.describe('per hour, minor units of the plant currency'),
});
export const standardCosts = table('standard-costs', ofPlant('standard_cost', false), {
  plantId: Id,
  stage: Stage.describe('stage that found it'),
  disposition: Disposition,
  validFrom: Day,
  terminalMinor: Minor.describe('per terminal, minor units of the plant currency'),
});
export const exchangeRates = table(
  'exchange-rates',
  ofGroup('exchange_rate'),
  {
    base: Currency,
    quote: Currency,
    validFrom: Day,
    rate: z
      .string()
      .regex(/^\d{1,9}(\.\d{1,10})?$/, 'must be a positive decimal number')
      .describe('how many units of quote one unit of base buys'),
  },
  (input) =>
    input
      .refine((it) => it.base !== it.quote, { path: ['quote'], message: 'must differ from the first currency' })
      .refine((it) => /[1-9]/.test(it.rate), { path: ['rate'], message: 'must be above zero' }),
);

export const masterData = {
  plants,
  lines,
  stages: plantStages,
  housings,
  terminals,
  wires,
  tools,
  customers,
  costRates,
  standardCosts,
  exchangeRates,
};

export type Plant = z.infer<typeof plants.Row>;
export type Line = z.infer<typeof lines.Row>;
export type PlantStage = z.infer<typeof plantStages.Row>;
export type Housing = z.infer<typeof housings.Row>;
export type Terminal = z.infer<typeof terminals.Row>;
export type Wire = z.infer<typeof wires.Row>;
export type Tool = z.infer<typeof tools.Row>;
export type Customer = z.infer<typeof customers.Row>;
export type CostRate = z.infer<typeof costRates.Row>;
export type StandardCost = z.infer<typeof standardCosts.Row>;
export type ExchangeRate = z.infer<typeof exchangeRates.Row>;

/** One cell of a plant's table of standard costs from one day on. */
export const StandardCostCell = z.object({
  stage: Stage,
  disposition: Disposition,
  terminalMinor: Minor.nullable().describe(
    'null: no standard cost from that day on record; an earlier one keeps holding',
  ),
  version: Version.nullable().describe('version of the row with that very day, null where there was none'),
});
export type StandardCostCell = z.infer<typeof StandardCostCell>;
export const saveStandardCosts = endpoint({
  method: 'PUT',
  path: '/api/v1/standard-costs',
  access: 'plantData.write',
  tag,
  summary: 'Set several standard costs of one plant that hold from one day on, all or none',
  body: z
    .object({ plantId: Id, validFrom: Day, cells: z.array(StandardCostCell).min(1).max(70) })
    .refine((it) => new Set(it.cells.map((cell) => `${cell.stage} ${cell.disposition}`)).size === it.cells.length, {
      path: ['cells'],
      message: 'must name each stage and disposition once',
    }),
  response: z.object({ items: z.array(standardCosts.Row) }),
});

export const Organisation = z.object({ name: Name, currency: Currency, version: Version, demo: z.boolean() });
export type Organisation = z.infer<typeof Organisation>;
export const readOrganisation = endpoint({
  method: 'GET',
  path: '/api/v1/organisation',
  access: 'signed-in',
  tag,
  summary: 'The group: name and currency',
  response: Organisation,
});
export const updateOrganisation = endpoint({
  method: 'PUT',
  path: '/api/v1/organisation',
  access: 'groupData.write',
  tag,
  summary: 'Change the group',
  write: 'update',
  body: z.object({ name: Name, currency: Currency }),
  response: Organisation,
});
