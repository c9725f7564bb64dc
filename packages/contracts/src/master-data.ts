/** Plants and what belongs to them, parts, customers, and money tables. Nothing is deleted; a row is retired and can be brought back. */
import { z } from 'zod';
import type { Permission } from './permissions.ts';
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
  TimeZone,
  Version,
} from './shared/scalars.ts';
import { CostRateKind, Disposition, RetentionStyle, SecondaryLockKind, Stage, ToolKind } from './taxonomy.ts';

const tag = 'master data';
const row = { id: Id, version: Version, retiredAt: Instant.nullable() };
const Minor = z.int().min(0).max(1_000_000_000_000);
const Cycles = z.int().min(0).max(1_000_000_000_000);
/** Cross-section in mm², at most four decimals. */
const SquareMillimetres = z.number().positive().max(1000);

/** The five operations every kind of master data has. `scoped` rows belong to one plant. */
const resource = <Input extends z.ZodObject, Row extends z.ZodObject>(
  name: string,
  permission: Permission,
  Input: Input,
  Row: Row,
) => {
  const path = `/api/v1/${name}` as const;
  return {
    name,
    Input,
    Row,
    list: endpoint({
      method: 'GET',
      path,
      access: 'masterData.read',
      tag,
      summary: `List ${name}`,
      query: PageQuery.extend({
        q: z.string().trim().max(100).optional(),
        plant: many(Id).optional(),
        retired: z.stringbool().default(false),
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
      access: permission,
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
      access: permission,
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
      access: permission,
      tag,
      summary: `Retire or bring back one of ${name}`,
      write: 'update',
      params: IdParams,
      body: z.object({ retired: z.boolean() }),
      response: Row,
    }),
  };
};
const table = <Shape extends z.ZodRawShape>(name: string, permission: Permission, shape: Shape) => {
  const Input = z.object(shape);
  return resource(name, permission, Input, Input.extend(row));
};

export const plants = table('plants', 'groupData.write', {
  code: Code,
  name: Name,
  zone: TimeZone,
  currency: Currency,
  weekStart: z.int().min(1).max(7).default(1).describe('first day of the reporting week, 1 = Monday … 7 = Sunday'),
  locale: Locale.default('en'),
});
export const lines = table('lines', 'plantData.write', { plantId: Id, code: Code, name: Name });
export const plantStages = table('stages', 'plantData.write', {
  plantId: Id,
  code: Code,
  name: Name,
  common: Stage.describe('the common stage it stands for'),
  position: z.int().min(1).max(200),
});
export const housings = table('housings', 'groupData.write', {
  code: Code,
  name: Name,
  rows: z.int().min(1).max(40),
  columns: z.int().min(1).max(60),
  missingCavities: z
    .array(Mark)
    .max(2400)
    .default([])
    .describe('cavities of the grid that the face does not have, such as B3'),
  retentionStyle: RetentionStyle,
  secondaryLock: SecondaryLockKind,
  safetyRelevant: z.boolean().default(false),
});
export const terminals = table('terminals', 'groupData.write', {
  code: Code,
  name: Name,
  wireMinMm2: SquareMillimetres,
  wireMaxMm2: SquareMillimetres,
  minRetentionN: z.number().positive().max(100_000).nullable().default(null).describe('minimum retention force, N'),
  approvedToolTypes: z.array(Mark).max(100).default([]),
});
export const wires = table('wires', 'groupData.write', {
  code: Code,
  name: Name,
  sectionMm2: SquareMillimetres,
  insulationMm: z
    .number()
    .positive()
    .max(100)
    .nullable()
    .default(null)
    .describe('outer diameter of the insulation, mm'),
});
export const tools = table('tools', 'plantData.write', {
  plantId: Id,
  code: Code,
  name: Name,
  kind: ToolKind,
  type: Mark.nullable().default(null).describe('the type an approval names'),
  cycleCount: Cycles.default(0),
  serviceInterval: Cycles.min(1).nullable().default(null),
  servicedAtCount: Cycles.default(0),
  servicedOn: Day.nullable().default(null),
});
export const customers = table('customers', 'groupData.write', {
  code: Code,
  name: Name,
  locale: Locale.default('en'),
});
export const costRates = table('cost-rates', 'plantData.write', {
  plantId: Id,
  kind: CostRateKind,
  validFrom: Day,
  hourlyMinor: Minor.describe('per hour, minor units of the plant currency'),
});
export const standardCosts = table('standard-costs', 'plantData.write', {
  plantId: Id,
  stage: Stage.describe('stage that found it'),
  disposition: Disposition,
  validFrom: Day,
  terminalMinor: Minor.describe('per terminal, minor units of the plant currency'),
});
export const exchangeRates = table('exchange-rates', 'groupData.write', {
  base: Currency,
  quote: Currency,
  validFrom: Day,
  rate: z
    .string()
    .regex(/^\d{1,9}(\.\d{1,10})?$/, 'must be a positive decimal number')
    .describe('how many units of quote one unit of base buys'),
});

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
