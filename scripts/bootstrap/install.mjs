import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pinnedNode, root, say } from './run.mjs';

/** Installs the locked packages when those in node_modules are missing or differ from package-lock.json. */
export function install() {
  if (isInstalled()) return;
  say('Installing packages (half a minute or so) …');
  const npm = process.env.npm_execpath;
  const args = ['ci', '--loglevel=error', '--no-audit', '--no-fund'];
  const options = { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] };
  const result = npm
    ? spawnSync(process.execPath, [npm, ...args], options)
    : spawnSync('npm', args, { ...options, shell: process.platform === 'win32' });
  if (result.status !== 0) {
    throw new Error(
      'The packages could not be installed; the lines above say why. Check the network and the npm registry, then try again.',
    );
  }
  requirePinnedNode();
}

/** npm writes what it installed to a lock file of its own; every locked package must be in it, optional ones may be absent. */
function isInstalled() {
  const node = pinnedNode();
  if (node && !existsSync(node)) return false;
  const installed = packagesOf('node_modules/.package-lock.json');
  return Object.entries(packagesOf('package-lock.json')).every(([path, { version, optional, link }]) => {
    if (path === '' || link) return true;
    return installed[path] ? installed[path].version === version : Boolean(optional);
  });
}

function packagesOf(file) {
  try {
    return JSON.parse(readFileSync(join(root, file), 'utf8')).packages;
  } catch (_) {
    return {};
  }
}

function requirePinnedNode() {
  const node = pinnedNode();
  if (!node || spawnSync(node, ['--version']).status === 0) return;
  throw new Error(
    'The Node that npm installed does not run here; Linux needs glibc 2.28 or newer (Alpine has none): use another system, or the Docker image.',
  );
}
