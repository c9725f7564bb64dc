import { execFile } from 'node:child_process';
import { readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { messageOf } from '../start-error.ts';
import type { Binaries } from './binaries.ts';
import { commandOf, isAlive } from './process.ts';

const run = promisify(execFile);

export interface Postmaster {
  pid: number;
  port: number;
}

/** The server that runs on `folder` now, by its lock file; undefined when there is none or the file is left from a dead one. */
export async function runningPostmaster(folder: string): Promise<Postmaster | undefined> {
  const found = await readPidFile(folder);
  if (!found || !isAlive(found.pid)) return undefined;
  return isPostgres(await commandOf(found.pid), folder) ? found : undefined;
}

/**
 * PostgreSQL refuses to start while the process id in its lock file is in use, even by a stranger that was given the number
 * later. Only the number is replaced, by one no process can have: the rest lets PostgreSQL find surviving children itself.
 */
export async function disownStrangersPid(folder: string): Promise<void> {
  const found = await readPidFile(folder);
  if (!found || !isAlive(found.pid)) return;
  const file = join(folder, 'postmaster.pid');
  const [, ...rest] = (await readFile(file, 'utf8')).split('\n');
  await writeFile(file, [impossiblePid, ...rest].join('\n'));
}

export type StartOutcome = { started: true } | { started: false; log: string };

/** Starts the server in the background and waits until it takes connections, however long its recovery needs. */
export async function startPostmaster(
  folder: string,
  { pgCtl, options }: Binaries,
  settings: Readonly<Record<string, string>>,
): Promise<StartOutcome> {
  const logFile = join(folder, 'server.log');
  await rename(logFile, `${logFile}.old`).catch(() => {});
  const flags = Object.entries(settings).map(([name, value]) => `-c ${name}=${value}`);
  try {
    await run(pgCtl, ['start', '-w', '-t', '3600', '-D', folder, '-l', logFile, '-o', flags.join(' ')], options);
    return { started: true };
  } catch (error) {
    const log = await readFile(logFile, 'utf8').catch(() => '');
    return { started: false, log: log || messageOf(error) };
  }
}

/** Ends all connections and shuts down cleanly. */
export async function stopPostmaster(
  folder: string,
  { pgCtl, options }: Binaries,
  mode: 'fast' | 'immediate' = 'fast',
) {
  await run(pgCtl, ['stop', '-w', '-t', '300', '-m', mode, '-D', folder], options);
}

const impossiblePid = 2 ** 31 - 1;

async function readPidFile(folder: string): Promise<Postmaster | undefined> {
  const text = await readFile(join(folder, 'postmaster.pid'), 'utf8').catch(() => '');
  const [pid, , , port] = text.split('\n').map((line) => Number.parseInt(line, 10));
  return pid ? { pid, port: port || 0 } : undefined;
}

function isPostgres(command: string, folder: string): boolean {
  if (process.platform === 'win32') return command.includes('postgres');
  return command.includes('postgres') && command.includes(folder);
}
