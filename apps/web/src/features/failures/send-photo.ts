import type { z } from 'zod';
import { addPhoto, type Photo } from '#contracts/failures.ts';
import type { Endpoint } from '#contracts/shared/endpoint.ts';
import type { IdParams } from '#contracts/shared/scalars.ts';
import { call } from '#web/ui/http.ts';

/** What the server reads; naming the types makes a phone hand over JPEG instead of its own format. */
export const photoTypes = 'image/jpeg,image/png,image/webp';

/** `addPhoto` with its form as the body. */
const target = addPhoto as unknown as Endpoint<
  z.ZodType<IdParams>,
  undefined,
  z.ZodType<FormData, FormData>,
  z.ZodType<Photo>
>;

/** Adds a photo to a report; the same key sent again adds nothing. */
export const sendPhoto = (reportId: string, photo: Blob, key: string): Promise<Photo> => {
  const body = new FormData();
  body.append('photo', photo, 'photo');
  return call(target, { params: { id: reportId }, body, idempotencyKey: key });
};
