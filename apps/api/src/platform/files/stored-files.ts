import { createHash } from 'node:crypto';
import { mkdir, open, readFile, rename } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { newId } from '#api/platform/ids.ts';
import { notFound } from '#api/platform/problems.ts';

const pathOf = (folder: string, hash: string) => join(folder, hash.slice(0, 2), hash);

/** Stores a file under the SHA-256 of its content, so that the same file is stored once and can be checked. Returns the hash. */
export async function storeFile(folder: string, bytes: Uint8Array): Promise<string> {
  const hash = createHash('sha256').update(bytes).digest('hex');
  const path = pathOf(folder, hash);
  await mkdir(dirname(path), { recursive: true });
  const unfinished = `${path}.${newId()}`;
  const file = await open(unfinished, 'wx', 0o640);
  try {
    await file.writeFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
  await rename(unfinished, path);
  return hash;
}

export async function readStoredFile(folder: string, hash: string): Promise<Buffer> {
  return readFile(pathOf(folder, hash)).catch(() => {
    throw notFound('file');
  });
}
