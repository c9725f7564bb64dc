import { execFile } from 'node:child_process';
import { stat } from 'node:fs/promises';
import { promisify } from 'node:util';
import { StartError } from '../start-error.ts';

const run = promisify(execFile);

/** Who PostgreSQL runs as: empty for ourselves; root must hand it to someone else, since PostgreSQL refuses root. */
export interface Account {
  uid?: number;
  gid?: number;
}

const name = 'postgres';
const runsAsRoot = () => process.getuid?.() === 0;

/** The owner of the database folder if there is one, else the system's user `postgres`, made when it is missing. */
export async function accountFor(folder: string): Promise<Account> {
  const owner = await stat(folder).catch(() => undefined);
  if (!runsAsRoot()) {
    if (owner && process.getuid && owner.uid !== process.getuid()) {
      throw new StartError(
        `The database in ${folder} belongs to another user: start as that user, or set DATA_DIR to a folder of your own.`,
      );
    }
    return {};
  }
  if (owner && owner.uid !== 0) return { uid: owner.uid, gid: owner.gid };
  return (await lookUp()) ?? (await create());
}

/** Whether that user may pass through a folder and all above it. */
export async function canEnter(folder: string, account: Account): Promise<boolean> {
  if (account.uid === undefined) return true;
  return run('test', ['-x', folder], { ...account, cwd: '/' }).then(
    () => true,
    () => false,
  );
}

async function lookUp(): Promise<Account | undefined> {
  try {
    const [uid, gid] = await Promise.all([run('id', ['-u', name]), run('id', ['-g', name])]);
    return { uid: Number(uid.stdout), gid: Number(gid.stdout) };
  } catch {
    return undefined;
  }
}

async function create(): Promise<Account> {
  try {
    await run('useradd', ['--system', '--user-group', '--no-create-home', '--shell', '/usr/sbin/nologin', name]);
  } catch {
    // Another start may have made the user in the meantime; the look-up below decides.
  }
  const account = await lookUp();
  if (account) return account;
  throw new StartError(
    `PostgreSQL refuses to run as root, and the user "${name}" could not be made: start as an ordinary user, or run "useradd --system ${name}".`,
  );
}
