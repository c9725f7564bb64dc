import type { Period } from '#analysis/calendar/period.ts';
import { calendarOf, weekAsked } from '#api/features/analyses/period.rules.ts';
import { type Actor, choosePlants } from '#api/platform/actor.ts';
import { notFound } from '#api/platform/problems.ts';
import type { Review, ReviewQuery } from '#contracts/review.ts';
import type { Database, Tx } from '#db/client.ts';
import { countReview } from './content/content.service.ts';
import { decisionsOf } from './decisions.service.ts';
import { readKept } from './frozen.rules.ts';
import { type Place, readPlaces } from './review.queries.ts';
import { findEditions, findReview, type Row, scopeOfRow, weekOfRow } from './review.repository.ts';
import { isOver } from './schedule.rules.ts';
import { coversScope, type Scope, scopeOf } from './scope.rules.ts';

export interface Chosen {
  scope: Scope;
  places: Place[];
  period: Period;
}

/** The plants and the week asked for. */
export async function choose(db: Database, actor: Actor, { plant, start }: ReviewQuery, at: Date): Promise<Chosen> {
  const chosen = choosePlants(actor, 'reviews.read', plant);
  const places = await readPlaces(db, chosen);
  if (plant?.some((id) => !places.some((place) => place.id === id))) throw notFound('plant');
  return {
    scope: scopeOf(
      places.map(({ id }) => id),
      chosen,
    ),
    places,
    period: weekAsked(start, at, calendarOf(places)),
  };
}

/** The review of a week: what is kept of it, or what is counted now. */
export async function reviewOfWeek(
  db: Database,
  actor: Actor,
  query: ReviewQuery & { live: boolean },
  at: Date,
): Promise<Review> {
  const chosen = await choose(db, actor, query, at);
  const { scope, period } = chosen;
  const editions = await findEditions(db.prisma, scope.key, period.from);
  const newest = editions[0];
  if (newest && !query.live) return presentReview(db.prisma, actor, newest, editions);
  return {
    id: null,
    state: 'live',
    edition: (newest?.edition ?? 0) + 1,
    reason: null,
    openedAt: null,
    openedBy: null,
    closedAt: null,
    closedBy: null,
    hash: null,
    intact: true,
    editions: editions.map(presentEdition),
    mayWrite: coversScope(actor, 'reviews.write', scope),
    isOver: isOver(period, at, chosen.places.map(toPlace)),
    content: { ...(await countReview(db, { ...chosen, at })), decisions: [] },
    version: null,
  };
}

const toPlace = ({ zone, week_start: weekStart }: Place) => ({ zone, weekStart });

/** A review of the actor's; one that shows a foreign plant is not found. */
export async function requireReview(tx: Tx | Database['prisma'], actor: Actor, id: string): Promise<Row> {
  const row = await findReview(tx, id);
  if (!row || !coversScope(actor, 'reviews.read', scopeOfRow(row))) throw notFound('review');
  return row;
}

export const readReview = async (db: Database, actor: Actor, id: string): Promise<Review> =>
  presentReview(db.prisma, actor, await requireReview(db.prisma, actor, id));

const presentEdition = (row: Row): Review['editions'][number] => ({
  id: row.id,
  edition: row.edition,
  state: stateOf(row),
  openedAt: row.openedAt.toISOString(),
  reason: row.reason,
});
const stateOf = ({ closedAt }: Row) => (closedAt ? 'closed' : 'open');

/** A review as it is kept; the decisions of an open one are those of now. */
export async function presentReview(
  tx: Tx | Database['prisma'],
  actor: Actor,
  row: Row,
  known?: Row[],
): Promise<Review> {
  const editions = known ?? (await findEditions(tx, row.scope, weekOfRow(row)));
  const { content, intact } = readKept(row);
  return {
    id: row.id,
    state: stateOf(row),
    edition: row.edition,
    reason: row.reason,
    openedAt: row.openedAt.toISOString(),
    openedBy: row.openedBy,
    closedAt: row.closedAt?.toISOString() ?? null,
    closedBy: row.closedBy,
    hash: row.hash,
    intact,
    editions: editions.map(presentEdition),
    mayWrite: coversScope(actor, 'reviews.write', scopeOfRow(row)),
    isOver: true,
    content: row.closedAt ? content : { ...content, decisions: await decisionsOf(tx, row, editions) },
    version: row.version,
  };
}
