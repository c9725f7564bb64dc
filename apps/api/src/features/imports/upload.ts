import { createHash } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { mkdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import type { FastifyRequest } from 'fastify';
import { problem } from '#api/platform/problems.ts';

const gibibyte = 1024 ** 3;
export const mostBytes = 2 * gibibyte;

export interface Uploaded {
  path: string;
  fileName: string;
  sha256: string;
  bytes: number;
}

export const uploadPath = (folder: string, id: string): string => join(folder, `${id}.upload`);
export const refusedPath = (folder: string, id: string): string => join(folder, `${id}.refused.csv`);

const tooLarge = () =>
  problem(
    'too_large',
    'A file may have 2 GiB at most. Split it, or leave out columns that are not needed, and send the parts one by one.',
  );

/** Streams the form's file to disk. Nothing stays where the request breaks off or the file is too large. */
export async function receiveFile(
  request: FastifyRequest,
  folder: string,
  id: string,
  most = mostBytes,
): Promise<Uploaded> {
  if (Number(request.headers['content-length'] ?? 0) > most + 64 * 1024) throw tooLarge();
  if (!request.isMultipart())
    throw problem('unsupported_media', 'Send the file as multipart/form-data in the form field `file`.');
  const part = await request.file({ limits: { fileSize: most } });
  if (part?.fieldname !== 'file')
    throw problem('invalid_request', 'The request holds no file. Send it in the form field `file`.', [
      { path: 'body/file', message: 'is missing' },
    ]);
  await mkdir(folder, { recursive: true });
  const path = uploadPath(folder, id);
  const sum = createHash('sha256');
  let bytes = 0;
  try {
    await pipeline(
      part.file,
      async function* (chunks) {
        for await (const chunk of chunks) {
          sum.update(chunk);
          bytes += chunk.length;
          yield chunk;
        }
      },
      createWriteStream(path),
    );
    if (part.file.truncated) throw tooLarge();
  } catch (error) {
    await rm(path, { force: true });
    throw (error as { statusCode?: number }).statusCode === 413 ? tooLarge() : error;
  }
  return { path, fileName: fileNameOf(part.filename), sha256: sum.digest('hex'), bytes };
}

const fileNameOf = (name: string | undefined): string =>
  (name ?? '')
    .replace(/^.*[/\\]/, '')
    .replace(/\p{Cc}/gu, '')
    .trim()
    .toWellFormed()
    .slice(0, 200) || 'file';
