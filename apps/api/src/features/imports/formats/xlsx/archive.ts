/** The parts of an XLSX package, unpacked as streams under limits that a real workbook keeps and a zip bomb breaks. */
import { once } from 'node:events';
import { promisify } from 'node:util';
import yauzl from 'yauzl';
import { FileFault } from '../../file-fault.ts';

const maxEntries = 10_000;
/** A million rows of twenty columns take about 1 GB of XML. */
const maxPartBytes = 4 * 1024 ** 3;
/** Worksheets pack 5 to 30 times, rarely 100; deflate itself reaches about 1000 on repeated bytes. */
const maxRatio = 250;
const ratioMattersFrom = 20 * 1024 ** 2;

export interface Archive {
  has(name: string): boolean;
  /** Bytes of a part as they unpack, in pieces. Throws `FileFault` when they pass a limit, or `broken_workbook`. */
  read(name: string, onPacked?: (share: number) => void): AsyncGenerator<Buffer>;
  close(): void;
}

export async function openArchive(path: string): Promise<Archive> {
  const zip = await promisify<string, yauzl.Options, yauzl.ZipFile>(yauzl.open)(path, {
    lazyEntries: true,
    autoClose: false,
    validateEntrySizes: true,
  }).catch(() => {
    throw new FileFault('broken_workbook');
  });
  try {
    const entries = await listEntries(zip);
    return {
      has: (name) => entries.has(name),
      read: (name, onPacked) => readPart(zip, entries.get(name), onPacked),
      close: () => zip.close(),
    };
  } catch (error) {
    zip.close();
    throw error instanceof FileFault ? error : new FileFault('broken_workbook');
  }
}

async function listEntries(zip: yauzl.ZipFile): Promise<Map<string, yauzl.Entry>> {
  if (zip.entryCount > maxEntries) throw new FileFault('oversize_workbook');
  const entries = new Map<string, yauzl.Entry>();
  zip.on('entry', (entry: yauzl.Entry) => {
    entries.set(entry.fileName, entry);
    zip.readEntry();
  });
  const ended = once(zip, 'end');
  zip.readEntry();
  await ended;
  for (const entry of entries.values()) checkSize(entry, entry.uncompressedSize);
  return entries;
}

function checkSize(entry: yauzl.Entry, bytes: number): void {
  const ratio = bytes / Math.max(1, entry.compressedSize);
  if (bytes > maxPartBytes || (bytes > ratioMattersFrom && ratio > maxRatio)) throw new FileFault('oversize_workbook');
}

async function* readPart(
  zip: yauzl.ZipFile,
  entry: yauzl.Entry | undefined,
  onPacked: (share: number) => void = () => {},
): AsyncGenerator<Buffer> {
  if (!entry) throw new FileFault('broken_workbook');
  if (entry.isEncrypted()) throw new FileFault('old_workbook');
  let bytes = 0;
  try {
    const stream = await promisify<yauzl.Entry, NodeJS.ReadableStream>(zip.openReadStream.bind(zip))(entry);
    for await (const chunk of stream) {
      bytes += chunk.length;
      checkSize(entry, bytes);
      onPacked(chunk.length / Math.max(1, entry.uncompressedSize));
      yield chunk as Buffer;
    }
  } catch (error) {
    throw error instanceof FileFault ? error : new FileFault('broken_workbook');
  }
}
