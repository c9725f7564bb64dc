import { z } from 'zod';
import type { PlantScope } from '#api/platform/actor.ts';
import { decodeCursor, toPage } from '#api/platform/cursor.ts';
import { type listProduction, Production, type ProductionInput } from '#contracts/production.ts';
import type { Output } from '#contracts/shared/endpoint.ts';
import { Day, Id } from '#contracts/shared/scalars.ts';
import type { Database, Tx } from '#db/client.ts';
import { join, queryRows, raw, type Sql, sql, txOne, txRows } from '#db/sql.ts';

type Query = NonNullable<Output<typeof listProduction.query>>;

const rowsOf = (chosen: Sql): Sql => sql`
  select s.id, s.plant_id as "plantId", p.code as "plantCode", s.day::text as day, s.line_id as "lineId",
    l.code as "lineCode", s.housing_id as "housingId", h.code as "housingCode", s.terminal_id as "terminalId",
    t.code as "terminalCode", s.units, s.terminals, s.version
  from (${chosen}) s
  join plant p on p.id = s.plant_id
  left join line l on l.id = s.line_id
  left join housing h on h.id = s.housing_id
  left join terminal t on t.id = s.terminal_id
  order by s.day desc, s.id desc`;

const among = (column: Sql, ids: readonly string[] | undefined) =>
  ids?.length ? [sql`${column} = any(${ids}::uuid[])`] : [];

export async function listRows(db: Database, scope: PlantScope, query: Query) {
  const after = decodeCursor(query.cursor, z.tuple([Day, Id]));
  const conditions = [
    sql`true`,
    ...(scope === 'all' ? [] : [sql`d.plant_id = any(${[...scope]}::uuid[])`]),
    ...(query.from ? [sql`d.day >= ${query.from}::date`] : []),
    ...(query.to ? [sql`d.day < ${query.to}::date`] : []),
    ...among(raw('d.line_id'), query.line),
    ...among(raw('d.housing_id'), query.housing),
    ...among(raw('d.terminal_id'), query.terminal),
    ...(after ? [sql`(d.day, d.id) < (${after[0]}::date, ${after[1]}::uuid)`] : []),
  ];
  const rows = await queryRows(
    db.pool,
    rowsOf(sql`select d.* from production d where ${join(conditions, ' and ')}
      order by d.day desc, d.id desc limit ${query.limit + 1}`),
    Production,
  );
  return toPage(rows, query.limit, (row) => [row.day, row.id]);
}

export const findRow = (tx: Tx, id: string): Promise<Production | null> =>
  txOne(tx, rowsOf(sql`select d.* from production d where d.id = ${id}::uuid`), Production);

/** A set of rows as parallel arrays, `r`, in the order that every writer locks them. */
const given = (rows: readonly ProductionInput[], ids: readonly string[]): Sql => sql`
  select * from unnest(${ids}::uuid[], ${rows.map((it) => it.day)}::date[], ${rows.map((it) => it.lineId)}::uuid[],
    ${rows.map((it) => it.housingId)}::uuid[], ${rows.map((it) => it.terminalId)}::uuid[],
    ${rows.map((it) => it.units)}::bigint[], ${rows.map((it) => it.terminals)}::bigint[])
  as r (id, day, line_id, housing_id, terminal_id, units, terminals)
  order by r.day, r.line_id, r.housing_id, r.terminal_id`;

const Missing = z.object({
  lines: z.array(z.string()),
  housings: z.array(z.string()),
  terminals: z.array(z.string()),
  today: z.string(),
});

/** Which of the ids named are not usable at the plant, and which day it is there. */
export const findMissing = (tx: Tx, plantId: string, rows: readonly ProductionInput[], at: Date) => {
  const unknown = (ids: (string | null)[], known: Sql) =>
    sql`array(select n.id::text from unnest(${[...new Set(ids)].filter((id) => id !== null)}::uuid[]) as n (id)
      where not exists (${known}))`;
  return txOne(
    tx,
    sql`select (${at}::timestamptz at time zone p.zone)::date::text as today,
      ${unknown(
        rows.map((it) => it.lineId),
        sql`select from line where line.id = n.id and line.plant_id = p.id and line.retired_at is null`,
      )} as lines,
      ${unknown(
        rows.map((it) => it.housingId),
        sql`select from housing where housing.id = n.id and housing.retired_at is null`,
      )} as housings,
      ${unknown(
        rows.map((it) => it.terminalId),
        sql`select from terminal where terminal.id = n.id and terminal.retired_at is null`,
      )} as terminals
      from plant p where p.id = ${plantId}::uuid and p.retired_at is null`,
    Missing,
  );
};

const Stored = z.object({
  day: z.string(),
  lineId: z.string().nullable(),
  housingId: z.string().nullable(),
  terminalId: z.string().nullable(),
  units: z.int(),
  terminals: z.int(),
});
export type Stored = z.infer<typeof Stored>;
const stored = sql`d.day::text as day, d.line_id as "lineId", d.housing_id as "housingId",
  d.terminal_id as "terminalId", d.units, d.terminals`;

/** The rows that are there already under the same keys, locked until the transaction ends. */
export const lockRows = (tx: Tx, plantId: string, rows: readonly ProductionInput[], ids: readonly string[]) =>
  txRows(
    tx,
    sql`select ${stored} from (${given(rows, ids)}) r join production d on d.plant_id = ${plantId}::uuid and d.day = r.day
        and d.line_id is not distinct from r.line_id and d.housing_id is not distinct from r.housing_id
        and d.terminal_id is not distinct from r.terminal_id
      order by d.day, d.line_id, d.housing_id, d.terminal_id for update of d`,
    Stored,
  );

/** Adds or replaces; returns the rows that were added or changed, and leaves equal ones alone. */
export const upsertRows = (tx: Tx, plantId: string, rows: readonly ProductionInput[], ids: readonly string[]) =>
  txRows(
    tx,
    sql`insert into production as d (id, plant_id, day, line_id, housing_id, terminal_id, units, terminals)
      select r.id, ${plantId}::uuid, r.day, r.line_id, r.housing_id, r.terminal_id, r.units, r.terminals
      from (${given(rows, ids)}) r
      on conflict (plant_id, day, line_id, housing_id, terminal_id) do update
        set units = excluded.units, terminals = excluded.terminals, version = d.version + 1
        where (d.units, d.terminals) <> (excluded.units, excluded.terminals)
      returning ${stored}, (xmax = 0) as added`,
    Stored.extend({ added: z.boolean() }),
  );
