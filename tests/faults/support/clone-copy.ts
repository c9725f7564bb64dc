import { execFileSync } from 'node:child_process';
import { chmodSync, chownSync, existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { clone } from './app-process.ts';

interface User {
  uid: number;
  gid: number;
}

/** A user without rights who exists on every system. */
export function ordinaryUser(): User {
  const id = (flag: string) => Number(execFileSync('id', [flag, 'nobody'], { encoding: 'utf8' }));
  return { uid: id('-u'), gid: id('-g') };
}

const needed = ['apps', 'packages', 'prisma', 'seed', 'node_modules', 'package.json', 'prisma.config.ts'];

/** A clone of its own in a home with the given mode and owner; hard links where the file system allows, so that it takes a second. */
export function copyClone(mode: number, owner: User = { uid: 0, gid: 0 }): { folder: string; remove(): void } {
  const home = mkdtempSync(join(tmpdir(), 'escape-ledger-home-'));
  const folder = join(home, 'clone');
  mkdirSync(folder);
  for (const entry of needed.filter((name) => existsSync(join(clone, name)))) copy(join(clone, entry), folder);
  chownSync(folder, owner.uid, owner.gid);
  chownSync(home, owner.uid, owner.gid);
  chmodSync(home, mode);
  return { folder, remove: () => rmSync(home, { recursive: true, force: true }) };
}

function copy(from: string, to: string): void {
  try {
    execFileSync('cp', ['-al', from, to], { stdio: 'ignore' });
  } catch {
    execFileSync('cp', ['-a', from, to], { stdio: 'ignore' });
  }
}
