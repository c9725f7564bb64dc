import type { FastifyReply } from 'fastify';
import type { Actor } from '#api/platform/actor.ts';
import type { Review } from '#contracts/review.ts';
import { Locale, type Paper } from '#contracts/shared/scalars.ts';
import type { Database } from '#db/client.ts';
import { readPlaces } from '../review.queries.ts';
import { languageOf } from './language.ts';
import { printSheet, whoseReview } from './sheet.ts';

export interface Printing {
  locale?: Locale | undefined;
  paper?: Paper | undefined;
}
export interface Printed {
  name: string;
  bytes: Buffer;
  pages: number;
}

/** The language of the one plant, else the reader's; the sheet that all plants print on, else A4. */
export async function printReview(
  db: Database,
  review: Review,
  { locale, paper }: Printing,
  reader: Locale,
): Promise<Printed> {
  const { content } = review;
  const places = await readPlaces(
    db,
    content.places.map(({ id }) => id),
  );
  const chosen = locale ?? (places.length === 1 ? places[0]!.locale : reader);
  const sheet = paper ?? (places.every((place) => place.paper === 'Letter') ? 'Letter' : 'A4');
  const language = languageOf(chosen);
  const who = content.places.length === 1 ? content.places[0]!.code : whoseReview(content, language);
  const week = language.format.week(content.period.from);
  return {
    name: language.words.mail.file(who, week).replaceAll(/[^\w.-]+/g, '-'),
    ...(await printSheet(review, chosen, sheet)),
  };
}

export async function documentOf(
  db: Database,
  actor: Actor,
  review: Review,
  asked: Printing,
  reply: FastifyReply,
): Promise<Buffer> {
  const reader = Locale.safeParse(actor.locale).data ?? 'en';
  const { name, bytes } = await printReview(db, review, asked, reader);
  reply.type('application/pdf').header('Content-Disposition', `inline; filename="${name}"`);
  return bytes;
}
