/** The database of the bench: filled once, and kept with its files where a folder is given. */
import { existsSync } from 'node:fs';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { newId } from '#api/platform/ids.ts';
import { hashSecret, newSecret } from '#api/platform/passwords.ts';
import { sessionCookie } from '#api/platform/session.ts';
import { openDatabase } from '#db/client.ts';
import { withClient } from '#db/connect.ts';
import { startEmbedded } from '#db/embedded.ts';
import { migrate } from '#db/migrate.ts';
import type { Files } from './duck.ts';
import { copyIn, withoutIndexes } from './fill.ts';
import { milliseconds } from './measure.ts';
import { costColumns, production, productionColumns, reportColumns, reports } from './rows.ts';
import { makeWorld } from './world.ts';

export interface Filled {
  url: string;
  files: Files;
  today: string;
  plant: string;
  someReports: string[];
  stop(): Promise<void>;
}
type Kept = Pick<Filled, 'today' | 'plant' | 'someReports'> & { rows: number };

export async function openFilled(folder: string, rows: number, say: (line: string) => void): Promise<Filled> {
  await mkdir(folder, { recursive: true });
  const files = {
    reports: join(folder, 'reports.tsv'),
    costs: join(folder, 'costs.tsv'),
    production: join(folder, 'production.tsv'),
  };
  const server = await startEmbedded({ dataDir: join(folder, 'data'), log: say });
  await migrate(server.url, say);
  const note = join(folder, 'kept.json');
  if (!existsSync(note)) await writeFile(note, JSON.stringify(await fill(server.url, files, rows, say)));
  const kept = JSON.parse(await readFile(note, 'utf8')) as Kept;
  if (kept.rows !== rows) throw new Error(`${folder} holds ${kept.rows} reports; name another folder for ${rows}`);
  return { url: server.url, files, ...kept, stop: server.stop };
}

async function fill(url: string, files: Files, rows: number, say: (line: string) => void): Promise<Kept> {
  const today = new Date().toISOString().slice(0, 10);
  const db = await openDatabase(url, { statementTimeout: 3_600_000 });
  const world = await makeWorld(db);
  await db.close();
  const someReports: string[] = [];
  const costs: string[] = [];
  function* lines() {
    let place = 0;
    for (const { report, cost } of reports(world, rows, today)) {
      if (cost) costs.push(cost);
      if (place++ % Math.ceil(rows / 500) === 0) someReports.push(report.slice(0, report.indexOf('\t')));
      yield report;
    }
  }
  await withClient(url, async (client) => {
    const restore = await withoutIndexes(client, 'failure');
    const took = await milliseconds(() => copyIn(client, `failure (${reportColumns})`, lines(), files.reports));
    say(`${rows} reports copied in ${Math.round(took / 1000)} s`);
    await copyIn(client, `cost_item (${costColumns})`, costs, files.costs);
    await copyIn(
      client,
      `production (${productionColumns})`,
      production(world, today, rows >= 5_000_000 ? 40 : 16),
      files.production,
    );
    const indexed = await milliseconds(restore);
    say(`indexes built in ${Math.round(indexed / 1000)} s`);
    await client.query('vacuum analyze');
    await client.query('checkpoint').catch(() => {});
  });
  return { rows, today, plant: world.plants[1]!.id, someReports };
}

/** A signed-in manager of all plants, as the cookie that a browser sends. */
export async function signIn(url: string): Promise<string> {
  const id = newId();
  const secret = newSecret();
  const db = await openDatabase(url);
  await db.prisma.person.create({
    data: { id, name: 'Bench', email: `${id}@bench.invalid`, passwordHash: '-', mustChangePassword: false },
  });
  await db.prisma.roleGrant.create({ data: { id: newId(), personId: id, role: 'manager' } });
  const at = new Date();
  await db.prisma.session.create({
    data: {
      secretHash: hashSecret(secret),
      personId: id,
      createdAt: at,
      lastSeenAt: at,
      expiresAt: new Date(at.getTime() + 86_400_000),
    },
  });
  await db.close();
  return `${sessionCookie}=${secret}`;
}
