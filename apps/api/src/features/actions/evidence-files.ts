import { cleanPhoto } from '#api/features/photos/image.ts';
import { storePhoto } from '#api/features/photos/photo-files.ts';
import { documentKind, looksLikePicture } from '#api/platform/files/file-kind.ts';
import type { ReceivedFile } from '#api/platform/files/receive-file.ts';
import { storeFile } from '#api/platform/files/stored-files.ts';
import { problem } from '#api/platform/problems.ts';

export interface StoredFile {
  kind: 'photo' | 'file';
  /** name in the store */
  file: string;
  /** as the sender called it */
  name: string;
  bytes: number;
}

/** Stores a photo re-encoded, without its location data; PDF, office files and text as they are. */
export async function storeEvidence(
  { photoDir, fileDir }: { photoDir: string; fileDir: string },
  { bytes, name }: ReceivedFile,
): Promise<StoredFile> {
  const kind = await documentKind(bytes);
  if (kind) return { kind: 'file', file: await storeFile(fileDir, bytes), name, bytes: bytes.length };
  if (!looksLikePicture(bytes) && !/\.hei[cf]$/i.test(name))
    throw problem('unsupported_media', 'Send a photo (JPEG, PNG, WebP, HEIC), a PDF, an office file or plain text.');
  const photo = await cleanPhoto(bytes);
  const file = await storePhoto(photoDir, photo.full, photo.small);
  return { kind: 'photo', file, name, bytes: photo.full.length };
}

/** At most 200 letters; what a sender writes under a file. */
export function captionOf({ fields }: ReceivedFile): string | null {
  const caption = fields.caption ?? '';
  if (caption.length > 200 || caption.includes('\0'))
    throw problem('invalid_request', 'The caption may have at most 200 letters.', [
      { path: 'body/caption', message: 'is too long or holds a character that cannot be stored' },
    ]);
  return caption || null;
}
