/** Which characters a text file is written in, found from its bytes. */
import { isUtf8 } from 'node:buffer';
import { createReadStream } from 'node:fs';
import { open } from 'node:fs/promises';
import iconv from 'iconv-lite';
import type { encodings } from '#contracts/imports.ts';
import { FileFault } from '../file-fault.ts';

export type Encoding = (typeof encodings)[number];

const headBytes = 64 * 1024;
const chunkBytes = 256 * 1024;

/**
 * A byte order mark decides; else NUL bytes on one side of each pair mean UTF-16; else a file that is valid UTF-8 from
 * beginning to end is UTF-8; else Windows-1252. Throws `FileFault` for an empty file and for one that is not text.
 */
export async function detectEncoding(path: string): Promise<Encoding> {
  const head = await readHead(path, headBytes);
  if (head.length === 0) throw new FileFault('empty');
  if (head[0] === 0xff && head[1] === 0xfe) return 'utf-16le';
  if (head[0] === 0xfe && head[1] === 0xff) return 'utf-16be';
  const wide = wideEncoding(head);
  if (wide) return wide;
  if (isBinary(head)) throw new FileFault('not_text');
  return (await isUtf8File(path)) ? 'utf-8' : 'windows-1252';
}

/** The text in pieces, without its byte order mark. `onBytes` is told how many bytes each piece took. */
export async function* readText(
  path: string,
  encoding: Encoding,
  onBytes: (bytes: number) => void = () => {},
): AsyncGenerator<string> {
  const decoder = iconv.getDecoder(encoding);
  for await (const chunk of createReadStream(path, { highWaterMark: chunkBytes })) {
    onBytes(chunk.length);
    const text = decoder.write(chunk);
    if (text !== '') yield text;
  }
  const rest = decoder.end();
  if (rest) yield rest;
}

export async function readHead(path: string, bytes: number): Promise<Buffer> {
  const file = await open(path);
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(bytes), 0, bytes, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await file.close();
  }
}

function wideEncoding(head: Buffer): Encoding | null {
  const pairs = head.length >> 1;
  let even = 0;
  let odd = 0;
  for (let at = 0; at < pairs * 2; at += 2) {
    if (head[at] === 0) even += 1;
    if (head[at + 1] === 0) odd += 1;
  }
  if (odd > pairs * 0.4 && even < pairs * 0.05) return 'utf-16le';
  if (even > pairs * 0.4 && odd < pairs * 0.05) return 'utf-16be';
  return null;
}

/** Text holds hardly any control characters besides tab, line feed, form feed and carriage return. */
function isBinary(head: Buffer): boolean {
  let control = 0;
  for (const byte of head) if (byte < 32 && byte !== 9 && byte !== 10 && byte !== 12 && byte !== 13) control += 1;
  return control > head.length * 0.02;
}

async function isUtf8File(path: string): Promise<boolean> {
  let carried = Buffer.alloc(0);
  for await (const chunk of createReadStream(path, { highWaterMark: chunkBytes })) {
    const bytes = Buffer.concat([carried, chunk]);
    const whole = bytes.length - unfinished(bytes);
    if (!isUtf8(bytes.subarray(0, whole))) return false;
    carried = bytes.subarray(whole);
  }
  return carried.length === 0;
}

/** How many bytes at the end begin a character that the next piece may finish: 0 to 3. */
function unfinished(bytes: Buffer): number {
  for (let back = 1; back <= Math.min(3, bytes.length); back += 1) {
    const byte = bytes[bytes.length - back]!;
    if ((byte & 0b1100_0000) === 0b1000_0000) continue;
    const length = byte >= 0b1111_0000 ? 4 : byte >= 0b1110_0000 ? 3 : byte >= 0b1100_0000 ? 2 : 1;
    return length > back ? back : 0;
  }
  return 0;
}
