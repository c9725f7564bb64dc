import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const { pinnedPackage } = createRequire(import.meta.url)('../check-node.cjs');

export const root = fileURLToPath(new URL('../../', import.meta.url));

/** The Node that npm brings for this machine, or undefined where it has none. */
export function pinnedNode() {
  const name = pinnedPackage(process.platform, process.arch);
  if (!name) return undefined;
  return join(root, 'node_modules', name, 'bin', process.platform === 'win32' ? 'node.exe' : 'node');
}

/** Runs a JavaScript file of a package with the project's Node; its output is shown only when it fails. */
export function runTool(label, file, args, env = {}) {
  say(`${label} …`);
  const bin = join(root, 'node_modules', '.bin');
  const node = pinnedNode();
  const result = spawnSync(
    node && existsSync(node) ? node : process.execPath,
    [join(root, 'node_modules', file), ...args],
    {
      cwd: root,
      encoding: 'utf8',
      env: { ...process.env, PATH: `${bin}${delimiter}${process.env.PATH}`, ...env },
    },
  );
  if (result.status === 0) return;
  const output = result.error ? result.error.message : `${result.stdout}${result.stderr}`;
  throw new Error(`${output.trim()}\n${label} failed; the lines above say why.`);
}

export function say(line) {
  console.log(line);
}
