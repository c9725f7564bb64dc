import { z } from 'zod';
import type { PlantScope } from '#api/platform/actor.ts';
import { decodeCursor, toPage } from '#api/platform/cursor.ts';
import { ForceSample, type listForce } from '#contracts/force.ts';
import type { Output } from '#contracts/shared/endpoint.ts';
import { Day, Id } from '#contracts/shared/scalars.ts';
import type { Database, Tx } from '#db/client.ts';
import { join, queryRows, raw, type Sql, sql, txOne } from '#db/sql.ts';

type Query = NonNullable<Output<typeof listForce.query>>;

/** The minimum that holds for a sample `s` of terminal `t`, N. */
export const minimumN = raw(
  `coalesce(s.minimum_n, case when s.kind = 'retention' then t.min_retention_n::double precision end)`,
);
const newtonsPerUnit = raw(`case s.unit when 'lbf' then 4.4482216152605 else 1 end`);

const rowsOf = (chosen: Sql): Sql => sql`
  select s.id, s.plant_id as "plantId", p.code as "plantCode", s.kind, s.day::text as day, s.terminal_id as "terminalId", t.code as "terminalCode",
    s.tool_id as "toolId", o.code as "toolCode", s.housing_id as "housingId", h.code as "housingCode", s.wire_id as "wireId", w.code as "wireCode",
    s.reference, s.unit, s.entered as values, round((s.minimum_n / ${newtonsPerUnit})::numeric, 6)::double precision as minimum, s.note, s.newtons, ${minimumN} as "minimumN",
    (select count(*)::int from unnest(s.newtons) n where n < ${minimumN}) as below,
    s.recorded_by as "recordedBy", s.recorded_at as "recordedAt", s.import_id as "importId", s.version
  from (${chosen}) s
  join plant p on p.id = s.plant_id
  join terminal t on t.id = s.terminal_id
  left join tool o on o.id = s.tool_id
  left join housing h on h.id = s.housing_id
  left join wire w on w.id = s.wire_id
  order by s.day desc, s.id desc`;

export const SampleRecord = ForceSample.extend({ recordedAt: z.coerce.date().transform((at) => at.toISOString()) });

/** What a question about samples `s` may be narrowed by. */
export interface Narrowed {
  from?: string | undefined;
  to?: string | undefined;
  kind?: string | undefined;
  terminal?: readonly string[] | undefined;
  tool?: readonly string[] | undefined;
  housing?: readonly string[] | undefined;
  wire?: readonly string[] | undefined;
}
const among = (column: Sql, ids: readonly string[] | undefined) =>
  ids?.length ? [sql`${column} = any(${[...ids]}::uuid[])`] : [];

export const narrow = (scope: PlantScope, asked: Narrowed): Sql =>
  join(
    [
      sql`s.voided_at is null`,
      ...(scope === 'all' ? [] : [sql`s.plant_id = any(${[...scope]}::uuid[])`]),
      ...(asked.from ? [sql`s.day >= ${asked.from}::date`] : []),
      ...(asked.to ? [sql`s.day < ${asked.to}::date`] : []),
      ...(asked.kind ? [sql`s.kind = ${asked.kind}::force_kind`] : []),
      ...among(raw('s.terminal_id'), asked.terminal),
      ...among(raw('s.tool_id'), asked.tool),
      ...among(raw('s.housing_id'), asked.housing),
      ...among(raw('s.wire_id'), asked.wire),
    ],
    ' and ',
  );

export async function listSamples(db: Database, scope: PlantScope, { cursor, limit, below, ...asked }: Query) {
  const after = decodeCursor(cursor, z.tuple([Day, Id]));
  const beyond = after ? sql`and (s.day, s.id) < (${after[0]}::date, ${after[1]}::uuid)` : sql``;
  const isBelow = sql`exists (select from unnest(s.newtons) n where n < ${minimumN})`;
  const wanted = below === undefined ? sql`` : below ? sql`and ${isBelow}` : sql`and not ${isBelow}`;
  const rows = await queryRows(
    db.pool,
    rowsOf(sql`select s.* from force_sample s join terminal t on t.id = s.terminal_id where ${narrow(scope, asked)} ${beyond} ${wanted}
      order by s.day desc, s.id desc limit ${limit + 1}`),
    SampleRecord,
  );
  return toPage(rows, limit, (row) => [row.day, row.id]);
}

export const findSample = (tx: Tx, id: string): Promise<z.output<typeof SampleRecord> | null> =>
  txOne(tx, rowsOf(sql`select s.* from force_sample s where s.id = ${id}::uuid and s.voided_at is null`), SampleRecord);

const Usable = z.object({
  today: Day,
  terminal: z.boolean(),
  tool: z.boolean(),
  housing: z.boolean(),
  wire: z.boolean(),
});
/** Whether the parts named can be used at the plant, and which day it is there; null for a plant that is not in use. */
export const findUsable = (
  tx: Tx,
  it: { plantId: string; terminalId: string; toolId: string | null; housingId: string | null; wireId: string | null },
  at: Date,
) =>
  txOne(
    tx,
    sql`select (${at}::timestamptz at time zone p.zone)::date::text as today,
      exists (select from terminal t where t.id = ${it.terminalId}::uuid and t.retired_at is null) as terminal,
      ${it.toolId}::uuid is null or exists (select from tool o where o.id = ${it.toolId}::uuid and o.plant_id = p.id) as tool,
      ${it.housingId}::uuid is null or exists (select from housing h where h.id = ${it.housingId}::uuid and h.retired_at is null) as housing,
      ${it.wireId}::uuid is null or exists (select from wire w where w.id = ${it.wireId}::uuid and w.retired_at is null) as wire
    from plant p where p.id = ${it.plantId}::uuid and p.retired_at is null`,
    Usable,
  );
