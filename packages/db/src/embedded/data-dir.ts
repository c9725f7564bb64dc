import { randomBytes } from 'node:crypto';
import { link, mkdir, readFile, realpath, rename, unlink, writeFile } from 'node:fs/promises';
import { userInfo } from 'node:os';
import { join, resolve } from 'node:path';
import { z } from 'zod';
import { codeOf, messageOf, StartError } from '../start-error.ts';
import { type Account, accountFor, canEnter } from './account.ts';

/** What DATA_DIR/database.json holds, readable by its owner only. */
const Settings = z.object({
  /** The database folder: absolute, or relative to DATA_DIR so that DATA_DIR may be moved. */
  folder: z.string(),
  port: z.int().nullable(),
  password: z.string().min(16),
});
type Settings = z.infer<typeof Settings>;

/** For what PostgreSQL's user must reach when he may not enter DATA_DIR or the clone. */
export const sharedRoot = '/var/lib/escape-ledger';

export interface DataDir {
  folder: string;
  account: Account;
  /** The port to use if it is free; null before the first start. */
  readonly port: number | null;
  password: string;
  keepPort(port: number): Promise<void>;
}

/** Opens DATA_DIR, deciding on the first start where the database lies and who runs it. */
export async function openDataDir(path: string): Promise<DataDir> {
  const dataDir = await writable(resolve(path), async () => {
    await mkdir(path, { recursive: true });
    return realpath(path);
  });
  const file = join(dataDir, 'database.json');
  let settings = await writable(dataDir, async () => (await read(file)) ?? create(file, await choose(dataDir)));
  const folder = resolve(dataDir, settings.folder);
  if (process.platform !== 'win32' && /["$`\\]/.test(folder)) {
    throw new StartError(
      `PostgreSQL cannot work in ${folder}: set DATA_DIR to a folder whose path has none of the characters " $ \` \\`,
    );
  }
  return {
    folder,
    account: await accountFor(folder),
    password: settings.password,
    get port() {
      return settings.port;
    },
    async keepPort(port) {
      if (port === settings.port) return;
      settings = { ...settings, port };
      await writable(dataDir, () => replace(file, settings));
    },
  };
}

async function choose(dataDir: string): Promise<Settings> {
  const folder = join(dataDir, 'postgres');
  const near = await canEnter(dataDir, await accountFor(folder));
  return {
    folder: near ? 'postgres' : join(sharedRoot, randomBytes(8).toString('hex')),
    port: null,
    password: randomBytes(24).toString('base64url'),
  };
}

async function read(file: string): Promise<Settings | undefined> {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return undefined;
    throw error;
  }
  try {
    return Settings.parse(JSON.parse(text));
  } catch {
    throw new StartError(
      `${file} is damaged: restore it from a backup; it says where the database lies and holds its password.`,
    );
  }
}

/** Whoever comes first decides; a start beside it takes over what the first wrote. */
async function create(file: string, settings: Settings): Promise<Settings> {
  const draft = await write(file, settings);
  try {
    await link(draft, file);
    return settings;
  } catch (error) {
    if (codeOf(error) !== 'EEXIST') throw error;
    return (await read(file)) ?? settings;
  } finally {
    await unlink(draft);
  }
}

async function replace(file: string, settings: Settings): Promise<void> {
  await rename(await write(file, settings), file);
}

async function write(file: string, settings: Settings): Promise<string> {
  const draft = `${file}.${process.pid}.${randomBytes(4).toString('hex')}`;
  await writeFile(draft, `${JSON.stringify(settings, null, 2)}\n`, { mode: 0o600, flag: 'wx' });
  return draft;
}

async function writable<Result>(dataDir: string, work: () => Promise<Result>): Promise<Result> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof StartError) throw error;
    const why = codeOf(error) ?? messageOf(error);
    throw new StartError(
      `Cannot write to DATA_DIR ${dataDir} (${why}): make it writable for user ${userName()}, or set DATA_DIR to another folder.`,
      { cause: error },
    );
  }
}

function userName(): string {
  try {
    return userInfo().username;
  } catch {
    return String(process.getuid?.());
  }
}
