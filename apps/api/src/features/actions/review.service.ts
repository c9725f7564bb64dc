import type { Actor, PlantScope } from '#api/platform/actor.ts';
import type { EffectLine, Promised, ReviewContent } from '#contracts/review-content.ts';
import type { Database, Tx } from '#db/client.ts';
import { countActions, listActions } from './list.queries.ts';
import { actionsNaming, type EffectRow, newestVerdicts, type PromiseRow, promisesBefore } from './review.queries.ts';

/** Decisions of reviews: the actions that name them. */
export async function decidedActions(
  tx: Tx | Database['prisma'],
  reviewIds: readonly string[],
): Promise<ReviewContent['decisions']> {
  const rows = await actionsNaming(tx, reviewIds);
  return rows.map(({ decidedAt, ...row }) => ({ ...row, decidedAt: decidedAt.toISOString() }));
}

function promiseOf({ state, doneOn, dueOn, past }: PromiseRow): Promised['promise'] {
  if (doneOn !== null) return doneOn <= dueOn ? 'kept' : 'kept_late';
  if (state === 'given_up') return 'given_up';
  return past ? 'broken' : 'not_due';
}

const order: readonly Promised['promise'][] = ['broken', 'given_up', 'kept_late', 'kept', 'not_due'];

/** What reviews of earlier weeks promised at these plants, and whether it was kept; what was not comes first. */
export async function promisesOf(
  db: Database,
  plantIds: readonly string[],
  weekFrom: string,
  at: Date,
): Promise<Promised[]> {
  const rows = await promisesBefore(db, plantIds, weekFrom, at);
  return rows
    .map((row) => ({ ...row, promise: promiseOf(row) }))
    .sort((a, b) => order.indexOf(a.promise) - order.indexOf(b.promise));
}

const overdueShown = 8;
const effectsShown = 6;

export async function overduePart(
  db: Database,
  actor: Actor,
  scope: PlantScope,
  at: Date,
): Promise<ReviewContent['actions']> {
  const asked = { scope, actor, at };
  const [{ open, overdue, reopened }, { items }] = await Promise.all([
    countActions(db, { ...asked, filter: {} }),
    listActions(db, { ...asked, filter: { overdue: true } }, { limit: overdueShown }),
  ]);
  return { open, overdue, reopened, list: items };
}

const urgency = ({ verdict, recurrences, changed }: EffectRow) =>
  Number(verdict === 'did_not_hold') * 4 + Number(recurrences > 0) * 2 + Number(changed);

/** How many fixes held, and those to look at: what did not hold, what happened again, what is newly said. */
export async function effectsPart(
  db: Database,
  plantIds: readonly string[],
  weekFrom: string,
): Promise<ReviewContent['effects']> {
  const rows = await newestVerdicts(db, plantIds, weekFrom);
  const count = (verdict: EffectLine['verdict']) => rows.filter((row) => row.verdict === verdict).length;
  return {
    held: count('held'),
    notShownYet: count('not_shown_yet'),
    didNotHold: count('did_not_hold'),
    list: rows
      .filter((row) => urgency(row) > 0)
      .sort((a, b) => urgency(b) - urgency(a))
      .slice(0, effectsShown),
  };
}
