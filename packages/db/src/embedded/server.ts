import { createServer } from 'node:net';
import { totalmem } from 'node:os';
import { setTimeout as delay } from 'node:timers/promises';
import pg from 'pg';
import { codeOf, messageOf, StartError } from '../start-error.ts';
import type { Binaries } from './binaries.ts';
import type { DataDir } from './data-dir.ts';
import { disownStrangersPid, runningPostmaster, startPostmaster } from './postmaster.ts';

/** How long a server may hold its files without answering before we give up on it, in milliseconds. */
const patience = 60_000;

/** Reaches the server on these files, adopting a running one and starting it otherwise. Returns an open connection to it. */
export async function reachServer(
  dataDir: DataDir,
  binaries: Binaries,
  settings: Readonly<Record<string, string>>,
): Promise<{ client: pg.Client; port: number }> {
  let giveUp = Date.now() + patience;
  let port = dataDir.port ?? 0;
  let lastTrouble = '';
  while (Date.now() < giveUp) {
    const running = await runningPostmaster(dataDir.folder);
    if (running) {
      const answer = await tryConnect(running.port, dataDir);
      if (answer instanceof pg.Client) return { client: answer, port: running.port };
      if (answer === 'busy') giveUp = Date.now() + patience;
      lastTrouble = `process ${running.pid} runs it but does not answer; end that process and start again`;
      await delay(100);
      continue;
    }
    await disownStrangersPid(dataDir.folder);
    port = await freePort(port);
    const outcome = await startPostmaster(dataDir.folder, binaries, { ...defaults(), ...settings, port: String(port) });
    if (!outcome.started) {
      lastTrouble = explain(outcome.log, dataDir.folder);
      if (!passing.test(outcome.log)) break;
      await delay(100);
    }
  }
  throw new StartError(`The database in ${dataDir.folder} does not start: ${lastTrouble}`);
}

/** Another start is ahead of ours, children of a killed server are still ending, or someone took the port: worth another try. */
const passing = /lock file "postmaster\.pid"|pre-existing shared memory block|could not create any TCP\/IP sockets/;

/** Settings for a working server that shares its machine with the application. Listens on this machine only. */
function defaults(): Record<string, string> {
  const megabytes = Math.floor(Math.min(totalmem(), process.constrainedMemory() || Infinity) / 2 ** 20);
  return {
    listen_addresses: '127.0.0.1',
    unix_socket_directories: '',
    shared_buffers: `${Math.min(1024, Math.max(128, Math.floor(megabytes / 8)))}MB`,
    effective_cache_size: `${Math.floor(megabytes / 2)}MB`,
    work_mem: '32MB',
    maintenance_work_mem: '256MB',
    max_wal_size: '2GB',
    random_page_cost: '1.1',
    jit: 'off',
    log_checkpoints: 'off',
    log_min_messages: 'log',
  };
}

/** A connection; 'busy' from a server that is starting, recovering or stopping. */
async function tryConnect(port: number, { folder, password }: DataDir): Promise<pg.Client | 'busy' | 'silent'> {
  const client = new pg.Client({
    host: '127.0.0.1',
    port,
    user: 'postgres',
    password,
    database: 'postgres',
    connectionTimeoutMillis: 5_000,
  });
  client.on('error', () => {});
  try {
    await client.connect();
    return client;
  } catch (error) {
    await client.end().catch(() => {});
    if (codeOf(error) === '28P01') {
      throw new StartError(
        `The database in ${folder} refuses the password in DATA_DIR/database.json: restore that file from a backup.`,
        { cause: error },
      );
    }
    return codeOf(error) === '57P03' ? 'busy' : 'silent';
  }
}

/** The wished port if nobody uses it, else one the system picks. */
async function freePort(wished: number): Promise<number> {
  const probe = createServer();
  try {
    return await new Promise<number>((resolve, reject) => {
      probe.once('error', reject);
      probe.listen({ port: wished, host: '127.0.0.1', exclusive: true }, () => {
        const address = probe.address();
        resolve(typeof address === 'object' && address ? address.port : 0);
      });
    });
  } catch (error) {
    if (wished === 0)
      throw new StartError(`No free port on 127.0.0.1 for the database: ${messageOf(error)}`, { cause: error });
    return freePort(0);
  } finally {
    probe.close();
  }
}

function explain(log: string, folder: string): string {
  const line =
    log.split('\n').findLast((text) => /\b(FATAL|PANIC|ERROR)\b/.test(text)) ?? log.trim().split('\n').at(-1) ?? '';
  return `${line.replace(/^.*?(FATAL|PANIC|ERROR):\s*/, '')} (see ${folder}/server.log)`;
}
