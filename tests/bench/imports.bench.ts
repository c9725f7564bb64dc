/** An import of a list against COPY of the very rows it makes, in a database of its own on the bench's server. */
import { createReadStream, createWriteStream } from 'node:fs';
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type pg from 'pg';
import { from as copyFrom, to as copyTo } from 'pg-copy-streams';
import { detectLayout } from '#api/features/imports/formats/open-file.ts';
import { loadReferences } from '#api/features/imports/imports.queries.ts';
import { inspectFile, proposeMapping } from '#api/features/imports/inspect.ts';
import { type ImportRun, runImport } from '#api/features/imports/run/run-import.ts';
import { newId } from '#api/platform/ids.ts';
import { type Database, openDatabase } from '#db/client.ts';
import { withClient } from '#db/connect.ts';
import { migrate } from '#db/migrate.ts';
import { milliseconds } from './measure.ts';
import type { Row } from './table.ts';
import { makeWorld } from './world.ts';

const name = 'bench_import';
const day = (at: number) => `${String(1 + (at % 28)).padStart(2, '0')}.${String(1 + (at % 12)).padStart(2, '0')}.2025`;
const causes = ['Werkzeug', 'Handhabung', 'nicht eingerastet', 'Prüfspitze', 'Kleber'];

function* list(rows: number): Generator<string> {
  yield 'Meldung;Werk;Linie;Station;Schicht;Gebaut am;Gefunden am;Fundort;Quelle;Gehäuse;Kontakt;Kammer;Werkzeug;Rollencharge;Fehlerbild;Menge gefunden;Menge geprüft;Ursache;Verbleib;Bemerkung;Kosten\r\n';
  let text = '';
  for (let at = 0; at < rows; at += 1) {
    text += `R-${at};P-${1 + (at % 12)};L-${1 + (at % 6)};ST-${at % 40};${1 + (at % 3)};${day(at)};${day(at)} 14:${10 + (at % 50)};Endprüfung;Linie;H-${1 + (at % 400)};C-${1 + (at % 120)};${1 + (at % 24)};T-${1 + (at % 60)};LOT${at % 5000};offen;${1 + (at % 7)};${(at % 100) + 7};${causes[at % 5]};Nacharbeit;${at % 10 === 0 ? `"Kontakt ""lose"" ${at}"` : `Kontakt sitzt nicht ${at}`};${at % 500},${10 + (at % 80)}\r\n`;
    if (text.length < 1 << 20) continue;
    yield text;
    text = '';
  }
  yield text;
}

const columnsOf = async (client: pg.ClientBase, table: string): Promise<string> => {
  const { rows } = await client.query(
    `select string_agg(quote_ident(attname), ', ' order by attnum) as list from pg_attribute where attrelid = $1::regclass and attnum > 0 and attgenerated = ''`,
    [table],
  );
  return rows[0].list;
};

async function importList(db: Database, path: string): Promise<number> {
  const file = await inspectFile('failures', path, await detectLayout(path), null, await loadReferences(db.pool, null));
  const id = newId();
  const run: Omit<ImportRun, 'mode' | 'ways'> = {
    kind: 'failures',
    skipRefused: false,
    path,
    refusedPath: `${path}.refused.csv`,
    file,
    mapping: { ...proposeMapping(file, null, null), fixed: { costBasis: 'booked', costCategory: 'scrap' } },
    meanings: [],
    plantIds: null,
    locale: 'en',
    doer: { importId: id, at: new Date(), actorId: id, actor: 'Bench', personId: null },
    audit: { kind: 'failures', fileName: 'list.csv', source: 'bench', sha256: '' },
    signal: new AbortController().signal,
    progress: () => {},
  };
  const checked = await runImport(db, { ...run, mode: 'check', ways: null }, async () => {});
  if (checked.questions || checked.outcome.refused > 0)
    throw new Error(`The list is not clean: ${JSON.stringify(checked)}`);
  const { ways } = checked;
  return milliseconds(() => runImport(db, { ...run, mode: 'commit', ways }, async () => {}));
}

/** COPY of the imported rows back into their own tables, emptied, with all indexes and triggers; and into tables without any. */
async function copyRows(client: pg.ClientBase, folder: string): Promise<{ same: number; bare: number }> {
  const tables = ['failure', 'cause_change', 'cost_item'];
  const took = { same: 0, bare: 0 };
  for (const table of tables) {
    const columns = await columnsOf(client, table);
    const path = join(folder, `${table}.copy`);
    await pipeline(client.query(copyTo(`copy (select ${columns} from ${table}) to stdout`)), createWriteStream(path));
    await client.query(`truncate ${table}`);
    await client.query(`create table bare_${table} as select ${columns} from ${table} with no data`);
    const load = (into: string) =>
      milliseconds(() =>
        pipeline(
          createReadStream(path, { highWaterMark: 1 << 18 }),
          client.query(copyFrom(`copy ${into} (${columns}) from stdin`)),
        ),
      );
    took.bare += await load(`bare_${table}`);
    took.same += await load(table);
    await rm(path);
  }
  return took;
}

export async function measureImport(serverUrl: string, folder: string, rows: number): Promise<Row[]> {
  const url = new URL(serverUrl);
  url.pathname = `/${name}`;
  await withClient(serverUrl, async (client) => {
    await client.query(`drop database if exists ${name} with (force)`);
    await client.query(`create database ${name}`);
  });
  await migrate(url.href);
  const db = await openDatabase(url.href, { statementTimeout: 0 });
  const path = join(folder, 'list.csv');
  try {
    await makeWorld(db);
    await pipeline(Readable.from(list(rows)), createWriteStream(path));
    const ours = await importList(db, path);
    const client = await db.pool.connect();
    const { same, bare } = await copyRows(client, folder).finally(() => client.release(true));
    const rate = (took: number) => `${Math.round((1000 * rows) / took)} rows/s`;
    return [
      { what: `import of ${rows} rows (reports, causes, costs)`, yardstick: same, goal: 'COPY into the same tables' },
      { what: 'the same', yardstick: bare, goal: 'COPY into tables without index or trigger' },
    ].map(({ what, yardstick, goal }) => ({
      what,
      ours: rate(ours),
      theirs: rate(yardstick),
      ratio: `${Math.round((100 * yardstick) / ours)} %`,
      goal: `≥ 25 % of ${goal}`,
      met: yardstick / ours >= 0.25,
    }));
  } finally {
    await db.close();
    await rm(path, { force: true });
    await withClient(serverUrl, async (client) => void (await client.query(`drop database ${name} with (force)`)));
  }
}
