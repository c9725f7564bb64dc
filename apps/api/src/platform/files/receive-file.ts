import type { FastifyRequest } from 'fastify';
import { problem } from '#api/platform/problems.ts';

const megabytes = 15;

export interface ReceivedFile {
  bytes: Buffer;
  name: string;
  fields: Readonly<Record<string, string>>;
}

const nameOf = (name: string | undefined): string =>
  (name ?? '')
    .replace(/^.*[/\\]/, '')
    .replace(/\p{Cc}/gu, '')
    .trim()
    .toWellFormed()
    .slice(0, 120) || 'file';

/** The form's one file in the field `file`, at most 15 MB, with the text fields sent before it. */
export async function receiveFile(request: FastifyRequest): Promise<ReceivedFile> {
  if (!request.isMultipart())
    throw problem('unsupported_media', 'Send the file as multipart/form-data in the form field `file`.');
  const part = await request.file({ limits: { fileSize: megabytes * 1024 * 1024 } });
  if (part?.fieldname !== 'file')
    throw problem('invalid_request', 'The request holds no file. Send it in the form field `file`.', [
      { path: 'body/file', message: 'is missing' },
    ]);
  const bytes = await part.toBuffer().catch((error) => {
    if (error?.statusCode !== 413) throw error;
    throw problem('too_large', `A file may have at most ${megabytes} MB. Save it smaller, or send a part of it.`);
  });
  const fields = Object.entries(part.fields).flatMap(([key, field]) =>
    field && 'value' in field ? [[key, String(field.value).trim()] as const] : [],
  );
  return { bytes, name: nameOf(part.filename), fields: Object.fromEntries(fields) };
}
