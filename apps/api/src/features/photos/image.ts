import sharp from 'sharp';
import { problem } from '#api/platform/problems.ts';

/** Enough for the largest phone camera in common use; more than that in one picture is a trap for the memory. */
const mostPixels = 64_000_000;
const longestSide = 4000;
const smallSide = 480;

const begins = (bytes: Buffer, at: number, text: string) => bytes.toString('latin1', at, at + text.length) === text;

/** JPEG, PNG and WebP by their first bytes; the name and the type that the sender claims are not asked. */
function kindOf(bytes: Buffer): 'known' | 'heif' | 'unknown' {
  if (begins(bytes, 0, '\xff\xd8\xff') || begins(bytes, 0, '\x89PNG\r\n\x1a\n')) return 'known';
  if (begins(bytes, 0, 'RIFF') && begins(bytes, 8, 'WEBP')) return 'known';
  return begins(bytes, 4, 'ftyp') ? 'heif' : 'unknown';
}

export interface CleanPhoto {
  full: Buffer;
  small: Buffer;
  width: number;
  height: number;
}

/**
 * The picture anew as JPEG: turned the right way up, without any metadata (place, device, time), at most 4000 pixels a side,
 * and a small one of at most 480.
 * @throws `unreadable_file` if it is no picture, is damaged or has too many pixels
 */
export async function cleanPhoto(bytes: Buffer): Promise<CleanPhoto> {
  const kind = kindOf(bytes);
  if (kind === 'heif')
    throw problem(
      'unreadable_file',
      'This server cannot read HEIC or AVIF photos. Set the camera to JPEG (“most compatible”) or save the photo as JPEG, and send that.',
    );
  if (kind === 'unknown') throw problem('unreadable_file', 'This is not a photo. Send a JPEG, PNG or WebP picture.');
  try {
    const picture = sharp(bytes, { limitInputPixels: mostPixels, failOn: 'error' }).autoOrient();
    const { data: full, info } = await picture
      .resize({ width: longestSide, height: longestSide, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .jpeg({ quality: 85, mozjpeg: false })
      .toBuffer({ resolveWithObject: true });
    const small = await sharp(full)
      .resize({ width: smallSide, height: smallSide, fit: 'inside' })
      .jpeg({ quality: 75 })
      .toBuffer();
    return { full, small, width: info.width, height: info.height };
  } catch (error) {
    const reason = /pixel limit/.test(String(error))
      ? `has more than ${mostPixels / 1e6} million pixels`
      : 'is damaged';
    throw problem('unreadable_file', `The picture ${reason}. Take it again, or save it smaller, and send that.`);
  }
}
