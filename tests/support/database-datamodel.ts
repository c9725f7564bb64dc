import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

export interface ModelField {
  name: string;
  dbName?: string | null;
  kind: 'scalar' | 'enum' | 'object' | 'unsupported';
  type: string;
  isList: boolean;
  isRequired: boolean;
  isId: boolean;
  isUnique: boolean;
  nativeType?: [string, string[]] | null;
}
export interface Model {
  name: string;
  dbName: string | null;
  fields: ModelField[];
  primaryKey: { fields: string[] } | null;
  uniqueFields: string[][];
}
export interface Datamodel {
  models: Model[];
  enums: { name: string; dbName: string | null; values: { name: string; dbName: string | null }[] }[];
}

/** prisma/schema as Prisma itself parses it. */
export function readDatamodel(): Datamodel {
  const folder = mkdtempSync(join(tmpdir(), 'escape-ledger-datamodel-'));
  try {
    const output = join(folder, 'datamodel.json');
    const schema = join(folder, 'schema');
    cpSync(join(root, 'prisma/schema'), schema, { recursive: true });
    const head = join(schema, 'foundation.prisma');
    const generator = `generator datamodel {
      provider = ${JSON.stringify(`node ${join(root, 'tests/support/database-generator.mjs')}`)}
      output = ${JSON.stringify(output)}
    }`;
    writeFileSync(head, readFileSync(head, 'utf8').replace(/generator \w+ \{[^}]*\}/, generator));
    execFileSync(process.execPath, [join(root, 'node_modules/prisma/build/index.js'), 'generate', '--schema', schema], {
      cwd: root,
      stdio: 'pipe',
      env: {
        ...process.env,
        PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
        PRISMA_HIDE_UPDATE_MESSAGE: '1',
        CHECKPOINT_DISABLE: '1',
      },
    });
    return JSON.parse(readFileSync(output, 'utf8'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
