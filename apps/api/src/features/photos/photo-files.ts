import { createHash } from 'node:crypto';
import { createReadStream, type ReadStream } from 'node:fs';
import { access, mkdir, open, readFile, rename } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { newId } from '#api/platform/ids.ts';
import { notFound } from '#api/platform/problems.ts';

export type Size = 'full' | 'small';

const pathOf = (folder: string, name: string, size: Size) =>
  join(folder, name.slice(0, 2), size === 'full' ? `${name}.jpg` : `${name}.small.jpg`);

/** Written under another name first and renamed when it is on the disk, so that a file is there whole or not at all. */
async function writeDurably(path: string, bytes: Uint8Array): Promise<void> {
  const unfinished = `${path}.${newId()}`;
  const file = await open(unfinished, 'wx', 0o640);
  try {
    await file.writeFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
  await rename(unfinished, path);
}

async function syncFolder(path: string): Promise<void> {
  if (process.platform === 'win32') return;
  const folder = await open(path, 'r');
  await folder.sync().finally(() => folder.close());
}

/** Stores a photo under the name of its content, so that the same photo is stored once. Returns the name. */
export async function storePhoto(folder: string, full: Uint8Array, small: Uint8Array): Promise<string> {
  const name = createHash('sha256').update(full).digest('hex');
  const path = pathOf(folder, name, 'full');
  await mkdir(dirname(path), { recursive: true });
  await writeDurably(pathOf(folder, name, 'small'), small);
  await writeDurably(path, full);
  await syncFolder(dirname(path));
  return name;
}

export async function readPhoto(folder: string, name: string): Promise<Buffer> {
  return readFile(pathOf(folder, name, 'full')).catch(() => {
    throw notFound('photo file');
  });
}

export async function openPhoto(folder: string, name: string, size: Size): Promise<ReadStream> {
  const path = pathOf(folder, name, size);
  await access(path).catch(() => {
    throw notFound('photo file');
  });
  return createReadStream(path);
}
