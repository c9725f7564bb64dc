import { execFile } from 'node:child_process';
import { chown, mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { messageOf, StartError } from '../start-error.ts';
import type { Account } from './account.ts';
import type { Binaries } from './binaries.ts';
import type { DataDir } from './data-dir.ts';
import { isAlive } from './process.ts';

const run = promisify(execFile);

/** Makes the database files on the first start; refuses files of another major version. */
export async function ensureCluster(dataDir: DataDir, binaries: Binaries, log: (line: string) => void): Promise<void> {
  const { folder } = dataDir;
  const version = await versionOf(folder);
  if (version === undefined) {
    log('Creating the database');
    await create(dataDir, binaries);
  } else if (version !== binaries.major) {
    throw new StartError(
      `The database in ${folder} was made by PostgreSQL ${version}, but this version brings PostgreSQL ${binaries.major}: start the earlier version, or set DATA_DIR to a new folder and restore a backup there.`,
    );
  }
}

async function versionOf(folder: string): Promise<number | undefined> {
  const text = await readFile(join(folder, 'PG_VERSION'), 'utf8').catch(() => undefined);
  return text === undefined ? undefined : Number.parseInt(text, 10);
}

/** Builds the files aside and moves them into place at once, so that a start that dies here leaves nothing half made. */
async function create({ folder, account, password }: DataDir, { initdb, options }: Binaries): Promise<void> {
  await mkdir(dirname(folder), { recursive: true, mode: 0o755 });
  await sweepDrafts(folder);
  const draft = `${folder}.new-${process.pid}`;
  const passwordFile = join(draft, 'password');
  const files = join(draft, 'files');
  try {
    await mkdir(draft, { mode: 0o700 });
    await writeFile(passwordFile, password, { mode: 0o600 });
    await give(draft, account);
    await give(passwordFile, account);
    await run(initdb, [`--pgdata=${files}`, `--pwfile=${passwordFile}`, ...initdbOptions], options);
    await rename(files, folder);
  } catch (error) {
    if ((await versionOf(folder)) !== undefined) return;
    throw new StartError(`The database could not be created in ${folder}: ${lastLine(error)}`, { cause: error });
  } finally {
    await rm(draft, { recursive: true, force: true });
  }
}

const initdbOptions = [
  '--username=postgres',
  '--auth=scram-sha-256',
  '--encoding=UTF8',
  '--locale=C',
  '--locale-provider=builtin',
  '--builtin-locale=C.UTF-8',
  '--set=timezone=UTC',
  '--set=log_timezone=UTC',
];

async function sweepDrafts(folder: string): Promise<void> {
  const prefix = `${basename(folder)}.new-`;
  for (const entry of await readdir(dirname(folder))) {
    if (!entry.startsWith(prefix) || isAlive(Number(entry.slice(prefix.length)))) continue;
    await rm(join(dirname(folder), entry), { recursive: true, force: true });
  }
}

async function give(path: string, { uid, gid }: Account): Promise<void> {
  if (uid !== undefined && gid !== undefined) await chown(path, uid, gid);
}

function lastLine(error: unknown): string {
  const stderr = error instanceof Error && 'stderr' in error ? String(error.stderr) : '';
  const lines = stderr.split('\n').filter((line) => /error|fatal/i.test(line));
  return lines.at(-1)?.trim() ?? messageOf(error).split('\n')[0] ?? '';
}
