/** Production volumes: units built and terminals inserted, the denominators of every rate. */
import { z } from 'zod';
import { endpoint } from './shared/endpoint.ts';
import { PageQuery, page } from './shared/paging.ts';
import { Day, Id, IdParams, many, Quantity, Version } from './shared/scalars.ts';

const tag = 'production';
export const ProductionInput = z.object({
  plantId: Id,
  day: Day,
  lineId: Id.nullable().default(null),
  housingId: Id.nullable().default(null),
  terminalId: Id.nullable().default(null),
  units: Quantity.describe('units built'),
  terminals: Quantity.describe('terminals inserted'),
});
export type ProductionInput = z.output<typeof ProductionInput>;
export const Production = ProductionInput.extend({
  id: Id,
  plantCode: z.string(),
  lineCode: z.string().nullable(),
  housingCode: z.string().nullable(),
  terminalCode: z.string().nullable(),
  version: Version,
});
export type Production = z.infer<typeof Production>;

export const listProduction = endpoint({
  method: 'GET',
  path: '/api/v1/production',
  access: 'production.read',
  tag,
  summary: 'List production rows, newest day first',
  query: PageQuery.extend({
    from: Day.optional(),
    to: Day.optional(),
    plant: many(Id).optional(),
    line: many(Id).optional(),
    housing: many(Id).optional(),
    terminal: many(Id).optional(),
  }),
  response: page(Production),
});
export const putProduction = endpoint({
  method: 'POST',
  path: '/api/v1/production',
  access: 'production.write',
  tag,
  summary: 'Report production of one plant; a row of the same day, line, housing and terminal is replaced',
  write: 'create',
  status: 200,
  body: z.object({ rows: z.array(ProductionInput).min(1).max(1000) }),
  response: z.object({ added: z.int(), changed: z.int(), same: z.int() }),
});
export const updateProduction = endpoint({
  method: 'PUT',
  path: '/api/v1/production/:id',
  access: 'production.write',
  tag,
  summary: 'Correct a production row',
  write: 'update',
  params: IdParams,
  body: z.object({ units: Quantity, terminals: Quantity }),
  response: Production,
});
