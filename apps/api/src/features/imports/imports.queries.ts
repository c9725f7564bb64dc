/** SQL that both kinds of import share: staging, references, exchange rates, audit. */
import type pg from 'pg';
import { from as copyFrom } from 'pg-copy-streams';
import { z } from 'zod';
import { execute, queryRows, Sql, sql } from '#db/sql.ts';
import type { ReferenceRow } from './interpret/references.ts';

export type Client = pg.ClientBase;
/** Who imports what, and when. */
export interface Doer {
  importId: string;
  at: Date;
  actorId: string;
  actor: string;
  /** null: a machine with a token. */
  personId: string | null;
}
export type Columns = readonly (readonly [name: string, type: string])[];

/** Tables of this connection alone, gone with it, never written to the log; and the room that sorting a million rows takes. */
export async function makeStaging(client: Client, columns: Columns): Promise<void> {
  await client.query(`set statement_timeout = 0; set work_mem = '128MB'; set temp_buffers = '64MB'`);
  const list = columns.map(([name, type]) => `${name} ${type}`).join(', ');
  await execute(client, new Sql([`create temp table import_row (line int not null, ${list})`], []));
}

/** Tells the planner how many rows were staged, once they are. */
export const analyseStaging = (client: Client) => execute(client, sql`analyze import_row`);

/** One import of a kind writes at a time, so that what it compared with is still so when it writes. */
export const lockImports = (client: Client, kind: string) =>
  execute(client, sql`select pg_advisory_xact_lock(hashtext('import'), hashtext(${kind}::text))`);

/** Takes lines in COPY's text format, and ends or destroys the copy. */
export const copyIntoStaging = (client: Client) => client.query(copyFrom('copy import_row from stdin'));

const Reference = z.object({
  of: z.enum(['plant', 'line', 'stage', 'housing', 'terminal', 'wire', 'tool', 'customer']),
  id: z.string(),
  plantId: z.string().nullable(),
  code: z.string(),
  name: z.string(),
  retired: z.boolean(),
  common: z.int().nullable(),
  currency: z.string().nullable(),
  zone: z.string().nullable(),
  safety: z.boolean(),
});

/** All master data that rows of these plants can name; `null` stands for all plants. Retired rows too: history names them. */
export const loadReferences = (client: pg.Pool | Client, plantIds: readonly string[] | null): Promise<ReferenceRow[]> =>
  queryRows(
    client,
    sql`with p as (select * from plant where ${plantIds}::uuid[] is null or id = any(${plantIds}::uuid[]))
      select 'plant' as of, id, null::uuid as "plantId", code, name, retired_at is not null as retired, null::int as common, currency, zone, false as safety from p
      union all select 'line', l.id, l.plant_id, l.code, l.name, l.retired_at is not null, null, null, null, false from line l join p on p.id = l.plant_id
      union all select 'stage', s.id, s.plant_id, s.code, s.name, s.retired_at is not null, s.common, null, null, false from stage s join p on p.id = s.plant_id
      union all select 'tool', t.id, t.plant_id, t.code, t.name, t.retired_at is not null, null, null, null, false from tool t join p on p.id = t.plant_id
      union all select 'housing', id, null, code, name, retired_at is not null, null, null, null, safety_relevant from housing
      union all select 'terminal', id, null, code, name, retired_at is not null, null, null, null, false from terminal
      union all select 'wire', id, null, code, name, retired_at is not null, null, null, null, false from wire
      union all select 'customer', id, null, code, name, retired_at is not null, null, null, null, false from customer`,
    Reference,
  );

const Rate = z.object({ base: z.string(), quote: z.string(), on: z.string(), rate: z.string() });
export const loadRates = (client: Client) =>
  queryRows(
    client,
    sql`select base, quote, valid_from::text as on, rate::text as rate from exchange_rate where retired_at is null`,
    Rate,
  );

export const loadGroupCurrency = async (client: Client): Promise<string> => {
  const [row] = await queryRows(client, sql`select currency from organisation`, z.object({ currency: z.string() }));
  return row!.currency;
};

const Today = z.object({ id: z.string(), day: z.string() });
export const loadToday = (client: Client, at: Date) =>
  queryRows(client, sql`select id, (${at}::timestamptz at time zone zone)::date::text as day from plant`, Today);

const Tally = z.object({ plantId: z.string(), verdict: z.enum(['add', 'change', 'skip', 'refuse']), rows: z.int() });
export type Tally = z.infer<typeof Tally>;
/** How many rows of the file each verdict holds, by plant. */
export const tallyVerdicts = (client: Client): Promise<Tally[]> =>
  queryRows(
    client,
    sql`select plant_id as "plantId", verdict, sum(rows)::int as rows from import_verdict group by plant_id, verdict`,
    Tally,
  );

/** The rows refused by what is in the database or elsewhere in the file; there may be many. */
export const refusedVerdicts = `select v.line, v.rows, v.reason, v.value, v.note from import_verdict v where v.verdict = 'refuse' order by v.line`;

/** One row for each plant that the import changed, with its totals. */
export const auditImport = (
  client: Client,
  { at, actorId, actor, importId }: Doer,
  file: { kind: string; fileName: string; source: string; sha256: string },
) =>
  execute(
    client,
    sql`insert into audit_entry (id, at, actor_id, actor, action, entity, entity_id, label, plant_id, after)
      select uuidv7(), ${at}::timestamptz, ${actorId}::uuid, ${actor}, 'imported', 'import', ${importId}, ${file.fileName}, t.plant_id,
        jsonb_build_object('kind', ${file.kind}::text, 'source', ${file.source}::text, 'sha256', ${file.sha256}::text) || t.totals
      from (select plant_id, jsonb_object_agg(verdict, rows) as totals
        from (select plant_id, verdict, sum(rows) as rows from import_verdict group by plant_id, verdict) v
        group by plant_id having bool_or(verdict in ('add', 'change'))) t`,
  );
