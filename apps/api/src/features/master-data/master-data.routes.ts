import type { FastifyInstance } from 'fastify';
import type { z } from 'zod';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/master-data.ts';
import type { Endpoint } from '#contracts/shared/endpoint.ts';
import type { IdParams } from '#contracts/shared/scalars.ts';
import type { Fields, Kind, Row } from './kind.ts';
import { costRate, exchangeRate, standardCost } from './kinds/money.ts';
import { customer, housing, terminal, wire } from './kinds/parts.ts';
import { line, plant, stage, tool } from './kinds/places.ts';
import { readOrganisation, updateOrganisation } from './organisation.service.ts';
import { type ListQuery, list, read } from './read.service.ts';
import { saveTable } from './standard-costs.service.ts';
import { create, retire, update } from './write.service.ts';

export const kinds: readonly Kind[] = [
  plant,
  line,
  stage,
  housing,
  terminal,
  wire,
  tool,
  customer,
  costRate,
  standardCost,
  exchangeRate,
];

/** The endpoints of a kind, without the fields that tell the kinds apart. */
interface Plain {
  list: Endpoint<undefined, z.ZodType<ListQuery>, undefined, z.ZodType<{ items: Row[]; next: string | null }>>;
  read: Endpoint<typeof IdParams, undefined, undefined, z.ZodType<Row>>;
  create: Endpoint<undefined, undefined, z.ZodType<Fields>, z.ZodType<Row>>;
  update: Endpoint<typeof IdParams, undefined, z.ZodType<Fields>, z.ZodType<Row>>;
  retire: Endpoint<typeof IdParams, undefined, z.ZodType<{ retired: boolean }>, z.ZodType<Row>>;
}

function bindKind(app: FastifyInstance, kind: Kind): void {
  const endpoints = kind.contract as unknown as Plain;
  bind(app, endpoints.list, ({ actor, query }) => list(app.db, kind, actor, query));
  bind(app, endpoints.read, ({ actor, params }) => read(app.db, kind, actor, params.id));
  bind(app, endpoints.create, ({ body, write }) => write((unit) => create(unit, kind, body)));
  bind(app, endpoints.update, ({ params, version, body, write }) =>
    write((unit) => update(unit, kind, params.id, version, body)),
  );
  bind(app, endpoints.retire, ({ params, version, body, write }) =>
    write((unit) => retire(unit, kind, params.id, version, body.retired)),
  );
}

export function masterData(app: FastifyInstance): void {
  for (const kind of kinds) bindKind(app, kind);
  bind(app, contract.saveStandardCosts, ({ body, write }) => write((unit) => saveTable(unit, body)));
  bind(app, contract.readOrganisation, () => readOrganisation(app.db.prisma));
  bind(app, contract.updateOrganisation, ({ version, body, write }) =>
    write((unit) => updateOrganisation(unit, version, body)),
  );
}
