/** Has every plant's review, and the group's, ready at its hour without anyone asking, and sends it to its subscribers. */
import type { FastifyInstance } from 'fastify';
import { systemActor } from '#api/platform/jobs/system-actor.ts';
import { queueMail } from '#api/platform/mail/queue.ts';
import { runUnit, type Unit } from '#api/platform/unit.ts';
import type { Review } from '#contracts/review.ts';
import type { Locale } from '#contracts/shared/scalars.ts';
import type { Database } from '#db/client.ts';
import { type Subscriber, subscribersOf } from './announce.queries.ts';
import { countReview } from './content/content.service.ts';
import { type Printed, printReview } from './document/document.service.ts';
import { languageOf } from './document/language.ts';
import { whoseReview } from './document/sheet.ts';
import { keep } from './frozen.rules.ts';
import { auditReview } from './keep.service.ts';
import { type Place, readPlaces } from './review.queries.ts';
import { addReview, findEditions } from './review.repository.ts';
import { type Chosen, presentReview } from './review.service.ts';
import { dueWeek, dueWeekOfGroup } from './schedule.rules.ts';
import { scopeOf } from './scope.rules.ts';

const placeOf = ({ zone, week_start: weekStart }: Place) => ({ zone, weekStart });

/** The newest review that is due of every plant in use, and of the group where there are several. */
export function dueReviews(places: readonly Place[], at: Date): Chosen[] {
  const inUse = places.filter(({ retired }) => !retired);
  const own = inUse.map(
    (place): Chosen => ({
      scope: scopeOf([place.id], [place.id]),
      places: [place],
      period: dueWeek(at, placeOf(place)),
    }),
  );
  if (places.length < 2 || inUse.length === 0) return own;
  const ids = places.map(({ id }) => id);
  return [...own, { scope: scopeOf(ids, 'all'), places: [...places], period: dueWeekOfGroup(at, inUse.map(placeOf)) }];
}

const isAnnounced = async (db: Database, { scope, period }: Chosen): Promise<boolean> =>
  (await db.prisma.reviewAnnouncement.count({ where: { scope: scope.key, weekFrom: new Date(period.from) } })) > 0;

/** Claims the announcement; false where another server was faster. */
async function claim({ tx, at }: Unit, { scope, period }: Chosen, reviewId: string): Promise<boolean> {
  const { count } = await tx.reviewAnnouncement.createMany({
    data: [{ scope: scope.key, weekFrom: new Date(period.from), reviewId, at }],
    skipDuplicates: true,
  });
  return count === 1;
}

async function announce(db: Database, due: Chosen, at: Date): Promise<void> {
  const { scope, period } = due;
  const known = await findEditions(db.prisma, scope.key, period.from);
  const counted = known.length > 0 ? null : await countReview(db, { ...due, at });
  await runUnit(db, { actor: systemActor, at }, async (unit) => {
    const { tx } = unit;
    const [newest] = await findEditions(tx, scope.key, period.from);
    const row =
      newest ??
      (await addReview(tx, {
        scope,
        weekFrom: period.from,
        edition: 1,
        reason: null,
        kept: keep({ ...counted!, decisions: [] }),
        at,
        by: null,
      }));
    if (!newest) await auditReview(unit, 'prepared', row);
    if (!(await claim(unit, due, row.id))) return;
    const review = await presentReview(tx, systemActor, row);
    await queueMail(unit, await lettersOf(db, review, await subscribersOf(tx, scope)));
  });
}

/** One letter each, with the sheet in the plant's language; that of the group is in the reader's own. */
async function lettersOf(db: Database, review: Review, people: readonly Subscriber[]) {
  const sheets = new Map<Locale, Printed>();
  for (const { locale } of people)
    if (!sheets.has(locale)) sheets.set(locale, await printReview(db, review, {}, locale));
  return people.map(({ id, email, locale }) => {
    const language = languageOf(locale);
    const { period } = review.content;
    const who = whoseReview(review.content, language);
    const { name, bytes } = sheets.get(locale)!;
    return {
      key: `review ${review.id} ${id}`,
      to: email,
      subject: language.words.mail.subject(who, language.format.week(period.from)),
      body: language.words.mail.text(who, language.format.period(period.from, period.to)),
      link: `/review/${review.id}`,
      locale,
      reason: 'subscription' as const,
      file: { name, bytes: new Uint8Array(bytes) },
    };
  });
}

/** Prepares what is due and not yet announced, one after the other; run again, it does nothing twice. */
export async function prepareReviews({ db, log }: Pick<FastifyInstance, 'db' | 'log'>, at: Date): Promise<void> {
  const places = await readPlaces(db, 'all');
  let failed: unknown;
  for (const due of dueReviews(places, at)) {
    if (await isAnnounced(db, due)) continue;
    await announce(db, due, at).catch((error) => {
      failed = error;
      log.error(error, `The review of ${due.places.map(({ code }) => code).join(' ')} could not be prepared.`);
    });
  }
  if (failed) throw failed;
}
