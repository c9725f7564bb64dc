import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { root } from './run.mjs';

/** A digest of files and of everything in folders: what was built from them is current while it stays the same. */
export function digest(paths) {
  const hash = createHash('sha256');
  for (const file of paths.flatMap((path) => filesIn(path))) {
    hash.update(`${file}\0`);
    hash.update(readFileSync(join(root, file)));
  }
  return hash.digest('hex');
}

export function isCurrent(name, value) {
  try {
    return readFileSync(stampFile(name), 'utf8') === value;
  } catch (_) {
    return false;
  }
}

export function keep(name, value) {
  mkdirSync(dirname(stampFile(name)), { recursive: true });
  writeFileSync(stampFile(name), value);
}

function stampFile(name) {
  return join(root, 'node_modules', '.cache', 'escape-ledger', name);
}

function filesIn(path) {
  if (!statSync(join(root, path)).isDirectory()) return [path];
  return readdirSync(join(root, path))
    .filter((name) => name !== 'dist' && name !== 'node_modules')
    .sort()
    .flatMap((name) => filesIn(`${path}/${name}`));
}
