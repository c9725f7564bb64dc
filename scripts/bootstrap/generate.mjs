import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { root, runTool } from './run.mjs';
import { digest, isCurrent, keep } from './stamp.mjs';

/** Makes the typed database client when the schema or Prisma changed. */
export function generate() {
  const value = digest(['prisma/schema', 'prisma.config.ts', 'node_modules/prisma/package.json']);
  if (existsSync(join(root, 'packages/db/src/generated/client.ts')) && isCurrent('prisma-client', value)) return;
  runTool('Preparing the database client', 'prisma/build/index.js', ['generate'], {
    // Generating needs no schema engine, yet Prisma downloads one unless this names an existing file.
    PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
    PRISMA_HIDE_UPDATE_MESSAGE: '1',
    CHECKPOINT_DISABLE: '1',
  });
  keep('prisma-client', value);
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) generate();
