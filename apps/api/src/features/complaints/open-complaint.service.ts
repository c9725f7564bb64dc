import { safetyPersonOf } from '#api/features/plant-calendar/product-safety.service.ts';
import { workingCalendar } from '#api/features/plant-calendar/working-calendar.service.ts';
import { type Actor, holds, requirePlant } from '#api/platform/actor.ts';
import { notFound, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Complaint } from '#contracts/complaints.ts';
import type { Tx } from '#db/client.ts';
import { txOne } from '#db/sql.ts';
import { clockState, minutesLeft } from './clocks.rules.ts';
import { complaintSql, StoredComplaint } from './complaint.queries.ts';
import { closingBlocksOf, mayConsent, maySeeSafety } from './consent.rules.ts';

/** A complaint as it stands for who asks, at the moment of asking. */
export async function presentComplaint(tx: Tx, actor: Actor, stored: StoredComplaint, at: Date): Promise<Complaint> {
  const calendar = await workingCalendar(tx, stored.plantId);
  const safetyPerson = await safetyPersonOf(tx, stored.plantId);
  const { createdById: _, clocks, consents, ...same } = stored;
  return {
    ...same,
    safetyPerson: safetyPerson?.name ?? null,
    maySeeSafety: maySeeSafety(actor, stored, safetyPerson),
    blocks: closingBlocksOf(stored),
    clocks: clocks.map(({ shortAt, urgentAt: _urgent, told: _told, ...clock }) => ({
      ...clock,
      state: clockState({ ...clock, shortAt }, at),
      minutesLeft: minutesLeft({ ...clock, shortAt }, at, calendar),
      dueAt: clock.dueAt.toISOString(),
      pausedAt: clock.pausedAt?.toISOString() ?? null,
      answeredAt: clock.answeredAt?.toISOString() ?? null,
    })),
    consents: consents.map(({ askedById, ...consent }) => ({
      ...consent,
      mayAnswer: consent.answer === null && mayConsent(actor, stored.plantId, askedById, safetyPerson),
    })),
  };
}

export async function findComplaint(tx: Tx, actor: Actor, id: string): Promise<StoredComplaint> {
  const stored = await txOne(tx, complaintSql(id), StoredComplaint);
  if (!stored || !holds(actor, 'complaints.read', stored.plantId)) throw notFound('complaint');
  return stored;
}

export const readComplaint = async (tx: Tx, actor: Actor, id: string, at: Date): Promise<Complaint> =>
  presentComplaint(tx, actor, await findComplaint(tx, actor, id), at);

/** The complaint as it is before a write: the actor may write at its plant. */
export async function writableComplaint({ tx, actor }: Unit, id: string): Promise<StoredComplaint> {
  const stored = await findComplaint(tx, actor, id);
  requirePlant(actor, 'complaints.write', stored.plantId);
  return stored;
}

/** The same, and it is not closed. */
export async function openComplaint(unit: Unit, id: string): Promise<StoredComplaint> {
  const stored = await writableComplaint(unit, id);
  if (stored.closedAt)
    throw problem('conflict', 'The complaint is closed. Open it again, with the reason, to change it.');
  return stored;
}
