import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type pg from 'pg';
import { from as copyFrom } from 'pg-copy-streams';
import { connect } from '#db/connect.ts';
import { StartError } from '#db/start-error.ts';
import { isoDay, localDay } from './calendar.ts';
import { makeComplaints } from './complaints.ts';
import { columnsOf, copyText } from './copy-text.ts';
import { makeEvidence } from './evidence/load.ts';
import { generateDemo } from './generate.ts';
import { demoPassword } from './group/people.ts';
import { group, plants } from './group/plants.ts';
import { photoTable, type SavePhoto } from './photo/save.ts';
import type { Table } from './tables/row.ts';

export interface LoadOptions {
  url: string;
  now: Date;
  /** last day of the demo, YYYY-MM-DD; default: yesterday where the day begins last */
  anchor?: string | undefined;
  seed?: number | undefined;
  hashPassword(password: string): Promise<string>;
  savePhoto: SavePhoto;
  log(line: string): void;
}
export interface Loaded {
  anchor: string;
  reports: number;
  production: number;
}

/** The day before today at the plant whose day begins last, so that nothing of the demo lies in anybody's future. */
export const anchorDay = (now: Date): string => isoDay(Math.min(...plants.map(({ zone }) => localDay(now, zone))) - 1);

const isEmpty = `select demo_loaded_at is null and not exists (select from plant) and not exists (select from person)
  and not exists (select from failure) and not exists (select from production) as empty from organisation`;

/** The reports' derived figures, as the service keeps them. */
const deriveFigures = `update failure f set standard_minor = g.standard_minor, gate = g.gate, gate_minor = g.gate_minor,
  gates_passed = g.gates_passed from failure_figures g where g.id = f.id and g.plant_id = f.plant_id`;

const markLoaded = `with loaded as (
    update organisation set name = $1, currency = $2, demo_loaded_at = $3, version = version + 1 returning *)
  insert into audit_entry (id, at, actor, action, entity, entity_id, label, after)
  select gen_random_uuid(), $3, 'system', 'demo loaded', 'organisation', id::text, name, jsonb_build_object('name', name, 'currency', currency)
  from loaded`;

/**
 * Loads the invented group into an empty database, in one transaction.
 * @throws {StartError} when the database holds anything already
 */
export async function loadDemo(options: LoadOptions): Promise<Loaded> {
  const { url, now, log, seed = 1, anchor = anchorDay(now) } = options;
  const client = await connect(url);
  try {
    await client.query('begin');
    await client.query('lock organisation in access exclusive mode');
    const { rows } = await client.query<{ empty: boolean }>(isEmpty);
    if (!rows[0]?.empty)
      throw new StartError('The database holds data already; the demo loads into an empty one only.');
    log(`Making the demo: eighteen months up to ${anchor} …`);
    const { tables, pictures, world, filed } = generateDemo({
      anchor,
      seed,
      passwordHash: await options.hashPassword(demoPassword),
    });
    const reports = rowsOf(tables, 'failure');
    const production = rowsOf(tables, 'production').length;
    log(`Loading ${reports.length} failure reports and ${production} rows of production …`);
    for (const table of tables) await copy(client, table);
    await copy(client, await photoTable(pictures, reports, options.savePhoto));
    await client.query(deriveFigures);
    await client.query('analyze failure');
    for (const table of await makeEvidence(client, world, filed)) await copy(client, table);
    for (const table of await makeComplaints(client, world)) await copy(client, table);
    await client.query(markLoaded, [group.name, group.currency, now]);
    await client.query('commit');
    await client.query('vacuum analyze');
    return { anchor, reports: reports.length, production };
  } finally {
    await client.end();
  }
}

const rowsOf = (tables: readonly Table[], name: string) => tables.find((table) => table.name === name)!.rows;

async function copy(client: pg.Client, table: Table): Promise<void> {
  const target = client.query(copyFrom(`copy ${table.name} (${columnsOf(table).join(', ')}) from stdin`));
  await pipeline(Readable.from([copyText(table)]), target);
}
