import { addDays, type Day } from '#analysis/calendar/day.ts';
import type { ReviewContent } from '#contracts/review-content.ts';
import { type Database, openDatabase } from '#db/client.ts';
import { type Decided, type Held, reviews } from '#seed/reviews.ts';
import { addEvidence } from './features/actions/evidence.service.ts';
import { moveAction } from './features/actions/state.service.ts';
import { dueReviews } from './features/review/announce.service.ts';
import { countReview } from './features/review/content/content.service.ts';
import { addDecision } from './features/review/decisions.service.ts';
import { closeReview, openReview } from './features/review/keep.service.ts';
import { readPlaces } from './features/review/review.queries.ts';
import type { Actor } from './platform/actor.ts';
import { runUnit } from './platform/unit.ts';

const eightOclock = (day: Day) => new Date(`${day}T08:00:00Z`);
const weekLong = 7;

async function managerOf(db: Database, plant: string | null): Promise<Actor> {
  const email = plant ? `manager.${plant.toLowerCase()}@example.test` : 'manager@example.test';
  const { id, name, locale } = await db.prisma.person.findUniqueOrThrow({ where: { email } });
  const grants = (await db.prisma.roleGrant.findMany({ where: { personId: id } })).map(({ role, plantId }) => ({
    role,
    plantId,
  }));
  return { id, kind: 'person', name, locale, mustChangePassword: false, grants };
}

/** What had been known then of complaints; everything else is counted by days that lie before. */
function asKnownAt(counted: Omit<ReviewContent, 'decisions'>, at: Date): Omit<ReviewContent, 'decisions'> {
  const list = counted.complaints.list.filter(({ receivedAt }) => new Date(receivedAt) <= at);
  const withClock = (state: string) => list.filter(({ next }) => next?.state === state).length;
  const complaints = {
    open: list.length,
    overdue: withClock('overdue'),
    short: withClock('short'),
    paused: withClock('paused'),
    safetyUnseen: list.filter(({ safety, safetySeen }) => safety && !safetySeen).length,
    list,
  };
  return { ...counted, complaints, effects: { held: 0, notShownYet: 0, didNotHold: 0, list: [] } };
}

/** What became of a decision until now. */
async function followUp(db: Database, actor: Actor, actionId: string, decided: Decided, day: Day, now: Date) {
  const { doneAfter, givenUp } = decided;
  const at = eightOclock(addDays(day, doneAfter ?? 1));
  if ((doneAfter === undefined && givenUp === undefined) || at > now) return;
  await runUnit(db, { actor, at }, async (unit) => {
    if (givenUp) return moveAction(unit, actionId, 1, { state: 'given_up', reason: givenUp });
    await addEvidence(unit, actionId, { text: decided.title, failureId: null });
    return moveAction(unit, actionId, 1, { state: 'carried_out', reason: null });
  });
}

/** Holds the demo's reviews of past weeks one after the other, each at its own time, through the same services. */
export async function holdReviews(url: string, now: Date): Promise<void> {
  const db = await openDatabase(url, { poolSize: 8 });
  try {
    const due = dueReviews(await readPlaces(db, 'all'), now);
    for (const held of reviews.toSorted((a, b) => b.weeksBack - a.weeksBack)) await hold(db, held, due, now);
  } finally {
    await db.close();
  }
}

async function hold(
  db: Database,
  { plant, weeksBack, decisions }: Held,
  due: ReturnType<typeof dueReviews>,
  now: Date,
) {
  const newest = due.find(({ scope, places }) => (plant ? !scope.group && places[0]!.code === plant : scope.group))!;
  const from = addDays(newest.period.from, -weekLong * weeksBack);
  const chosen = { ...newest, period: { from, to: addDays(from, weekLong) } };
  const day = chosen.period.to;
  const at = eightOclock(day);
  const actor = await managerOf(db, plant);
  const counted = asKnownAt(await countReview(db, { ...chosen, at }), at);
  const { id } = await runUnit(db, { actor, at }, (unit) => openReview(unit, chosen, counted));
  for (const decided of decisions) {
    const { title, kind, dueAfter } = decided;
    const plantId = chosen.scope.plantIds[0]!;
    const dueOn = addDays(day, dueAfter);
    const { content } = await runUnit(db, { actor, at }, (unit) =>
      addDecision(unit, id!, { plantId, kind, title, description: null, ownerId: actor.id, dueOn }),
    );
    await followUp(db, actor, content.decisions.at(-1)!.id, decided, day, now);
  }
  const { version } = await db.prisma.review.findUniqueOrThrow({ where: { id: id! } });
  await runUnit(db, { actor, at: new Date(at.getTime() + 30 * 60_000) }, (unit) => closeReview(unit, id!, version));
}
