/** What a file is by its content; its name and the type that the sender claims are not asked. */
import { fromBuffer } from 'yauzl';

export interface FileKind {
  mediaType: string;
  extension: string;
}

const office = 'application/vnd.openxmlformats-officedocument';
const officeKinds: readonly [folder: string, kind: FileKind][] = [
  ['xl/', { mediaType: `${office}.spreadsheetml.sheet`, extension: 'xlsx' }],
  ['word/', { mediaType: `${office}.wordprocessingml.document`, extension: 'docx' }],
  ['ppt/', { mediaType: `${office}.presentationml.presentation`, extension: 'pptx' }],
];
const mostEntries = 5000;

/** Names of a zip's entries; null where it is no zip or has more than an office file has. Nothing is unpacked. */
function zipNames(bytes: Buffer): Promise<string[] | null> {
  return new Promise((resolve) => {
    fromBuffer(bytes, { lazyEntries: true }, (error, zip) => {
      if (error || zip.entryCount > mostEntries) return resolve(null);
      const names: string[] = [];
      zip.on('entry', (entry) => {
        names.push(entry.fileName);
        zip.readEntry();
      });
      zip.on('error', () => resolve(null));
      zip.on('end', () => resolve(names));
      zip.readEntry();
    });
  });
}

async function officeKind(bytes: Buffer): Promise<FileKind | null> {
  const names = await zipNames(bytes);
  if (!names?.includes('[Content_Types].xml') || names.some((name) => /vbaProject|\.exe$|\.dll$/i.test(name)))
    return null;
  return officeKinds.find(([folder]) => names.some((name) => name.startsWith(folder)))?.[1] ?? null;
}

/** Unicode text without control characters other than tab and line ends. */
function isText(bytes: Buffer): boolean {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
    return !/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/.test(text);
  } catch {
    return false;
  }
}

/** PDF, office documents without macros, and plain text; null for everything else. Pictures are told by `cleanPhoto`. */
export async function documentKind(bytes: Buffer): Promise<FileKind | null> {
  if (bytes.toString('latin1', 0, 5) === '%PDF-') return { mediaType: 'application/pdf', extension: 'pdf' };
  if (bytes.toString('latin1', 0, 4) === 'PK\x03\x04') return officeKind(bytes);
  return bytes.length > 0 && isText(bytes) ? { mediaType: 'text/plain; charset=utf-8', extension: 'txt' } : null;
}

/** JPEG, PNG or WebP by its first bytes. */
export const looksLikePicture = (bytes: Buffer): boolean =>
  ['\xff\xd8\xff', '\x89PNG'].some((begin) => bytes.toString('latin1', 0, begin.length) === begin) ||
  (bytes.toString('latin1', 0, 4) === 'RIFF' && bytes.toString('latin1', 8, 12) === 'WEBP');
