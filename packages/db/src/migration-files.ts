import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';

export interface Migration {
  name: string;
  /** SHA-256 of the file's bytes, hexadecimal, as Prisma computes it. */
  checksum: string;
  script: string;
}

const folder = new URL('../../../prisma/migrations/', import.meta.url);

/** All migrations, oldest first by the time in their names. */
export async function readMigrations(from: URL = folder): Promise<Migration[]> {
  const entries = await readdir(from, { withFileTypes: true });
  const names = entries.filter((entry) => entry.isDirectory()).map(({ name }) => name);
  return Promise.all(names.sort().map((name) => read(name, from)));
}

async function read(name: string, from: URL): Promise<Migration> {
  const bytes = await readFile(new URL(`${name}/migration.sql`, from));
  return { name, checksum: createHash('sha256').update(bytes).digest('hex'), script: bytes.toString('utf8') };
}
