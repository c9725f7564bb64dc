/** What changes a review that is kept: opening, renewing its figures, closing, a corrected edition. */
import { addDays } from '#analysis/calendar/day.ts';
import type { Actor } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { changedMeanwhile, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Review } from '#contracts/review.ts';
import type { ReviewContent } from '#contracts/review-content.ts';
import type { Database } from '#db/client.ts';
import { countReview } from './content/content.service.ts';
import { decisionsOf } from './decisions.service.ts';
import { keep, readKept } from './frozen.rules.ts';
import { readPlaces } from './review.queries.ts';
import { addReview, changeOpen, findEditions, type Row, scopeOfRow, weekOfRow } from './review.repository.ts';
import { type Chosen, choose, presentReview, requireReview } from './review.service.ts';
import { isOver } from './schedule.rules.ts';
import { coversScope, type Scope } from './scope.rules.ts';

/** Counts, outside of any transaction, what is then kept in one. */
export type Counted = Omit<ReviewContent, 'decisions'>;

function requireWrite(actor: Actor, scope: Scope): void {
  if (coversScope(actor, 'reviews.write', scope)) return;
  throw problem(
    'not_allowed',
    'This takes the role of a manager at every plant of the review. Ask an administrator for the role you need.',
  );
}

const closedAlready = () =>
  problem('conflict', 'This review is closed and stays as it is. Begin a corrected edition instead.');

export async function auditReview(unit: Unit, action: string, row: Row, more: object = {}): Promise<void> {
  const { content } = readKept(row);
  await recordChange(unit, {
    action,
    entity: 'review',
    entityId: row.id,
    label: `${content.group ? '' : `${content.plants.map(({ code }) => code).join(' ')} `}${weekOfRow(row)}`,
    plantId: row.plantIds.length === 1 ? row.plantIds[0]! : null,
    before: null,
    after: { edition: row.edition, hash: row.hash, ...more },
  });
}

/** Refuses before anything is counted what may not be kept. */
export async function chooseToOpen(
  db: Database,
  actor: Actor,
  body: { plant: string[]; start: string },
  at: Date,
): Promise<Chosen> {
  const chosen = await choose(db, actor, { plant: body.plant.length ? body.plant : undefined, start: body.start }, at);
  requireWrite(actor, chosen.scope);
  const places = chosen.places.map(({ zone, week_start: weekStart }) => ({ zone, weekStart }));
  if (isOver(chosen.period, at, places)) return chosen;
  throw problem(
    'not_consistent',
    `The week ends on ${addDays(chosen.period.to, -1)}. Its review can be kept when that day is over at every plant.`,
    [{ path: 'body/start', message: 'lies in a week that is not over' }],
  );
}

export async function openReview(unit: Unit, { scope, period }: Chosen, counted: Counted): Promise<Review> {
  if ((await findEditions(unit.tx, scope.key, period.from)).length > 0)
    throw problem(
      'already_exists',
      'This review is kept already. Open it, or begin a corrected edition once it is closed.',
    );
  const row = await addReview(unit.tx, {
    scope,
    weekFrom: period.from,
    edition: 1,
    reason: null,
    kept: keep({ ...counted, decisions: [] }),
    at: unit.at,
    by: unit.actor.name,
  });
  await auditReview(unit, 'opened', row);
  return presentReview(unit.tx, unit.actor, row);
}

/** The figures of a kept review counted anew, for its renewal or its correction. */
export async function countAgain(db: Database, actor: Actor, id: string, at: Date): Promise<Counted> {
  const row = await requireReview(db.prisma, actor, id);
  const scope = scopeOfRow(row);
  requireWrite(actor, scope);
  const { content } = readKept(row);
  return countReview(db, { scope, places: await readPlaces(db, scope.plantIds), period: content.period, at });
}

async function requireOpen(unit: Unit, id: string, version: number): Promise<Row> {
  const row = await requireReview(unit.tx, unit.actor, id);
  requireWrite(unit.actor, scopeOfRow(row));
  if (row.closedAt) throw closedAlready();
  if (row.version !== version) throw changedMeanwhile();
  return row;
}

async function change(unit: Unit, row: Row, data: Parameters<typeof changeOpen>[2]): Promise<Row> {
  if (!(await changeOpen(unit.tx, row, data))) throw changedMeanwhile();
  return requireReview(unit.tx, unit.actor, row.id);
}

export async function renewReview(unit: Unit, id: string, version: number, counted: Counted): Promise<Review> {
  const row = await requireOpen(unit, id, version);
  const after = await change(unit, row, { ...keep({ ...counted, decisions: [] }), figuresAt: unit.at });
  await auditReview(unit, 'renewed', after);
  return presentReview(unit.tx, unit.actor, after);
}

/** Freezes the page: its figures as they were counted last, and the decisions as they are now. */
export async function closeReview(unit: Unit, id: string, version: number): Promise<Review> {
  const row = await requireOpen(unit, id, version);
  const editions = await findEditions(unit.tx, row.scope, weekOfRow(row));
  const decisions = await decisionsOf(unit.tx, row, editions);
  const { content, intact } = readKept(row);
  if (!intact)
    throw problem(
      'conflict',
      'What is kept of this review was changed outside of the program. Renew its figures first.',
    );
  const after = await change(unit, row, {
    ...keep({ ...content, decisions }),
    closedAt: unit.at,
    closedBy: unit.actor.name,
  });
  await auditReview(unit, 'closed', after, { decisions: decisions.map(({ number }) => number) });
  return presentReview(unit.tx, unit.actor, after);
}

/** A new edition beside the closed one, with figures of now; it can be closed in turn. */
export async function correctReview(unit: Unit, id: string, reason: string, counted: Counted): Promise<Review> {
  const row = await requireReview(unit.tx, unit.actor, id);
  requireWrite(unit.actor, scopeOfRow(row));
  const [newest] = await findEditions(unit.tx, row.scope, weekOfRow(row));
  if (!newest?.closedAt)
    throw problem('conflict', 'An edition of this review is open. Change that one, or close it first.');
  const after = await addReview(unit.tx, {
    scope: scopeOfRow(row),
    weekFrom: weekOfRow(row),
    edition: newest.edition + 1,
    reason,
    kept: keep({ ...counted, decisions: [] }),
    at: unit.at,
    by: unit.actor.name,
  });
  await auditReview(unit, 'corrected', after, { reason });
  return presentReview(unit.tx, unit.actor, after);
}
