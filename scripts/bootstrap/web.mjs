import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { root, runTool } from './run.mjs';
import { digest, isCurrent, keep } from './stamp.mjs';

/** Builds the dashboard when its sources, the contracts or the packages changed. */
export function buildWeb() {
  const value = digest(['apps/web', 'packages/contracts', 'package-lock.json']);
  if (existsSync(join(root, 'apps/web/dist/index.html')) && isCurrent('web', value)) return;
  runTool('Building the dashboard', 'vite/bin/vite.js', ['build', 'apps/web', '--logLevel', 'warn']);
  keep('web', value);
}
