import { listColleagues } from '#api/features/people/colleagues.service.ts';
import { workingCalendar } from '#api/features/plant-calendar/working-calendar.service.ts';
import { newId } from '#api/platform/ids.ts';
import { changedMeanwhile, notFound, problem, unknownReference } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { clockSteps } from '#contracts/complaint-parts.ts';
import type { Complaint } from '#contracts/complaints.ts';
import type { Reply } from '#contracts/reply-times.ts';
import type { Prisma } from '#db/generated/client.ts';
import type { StoredClock, StoredComplaint } from './complaint.queries.ts';
import { finish } from './finish.ts';
import { openComplaint } from './open-complaint.service.ts';
import { reckonAnew } from './reckoning.service.ts';
import { tellHandedOver } from './telling.service.ts';

type Opened = { complaint: StoredComplaint; clock: StoredClock };

/** A clock that waits for its answer, of an open complaint. */
async function openClock(unit: Unit, id: string, kind: Reply): Promise<Opened> {
  const complaint = await openComplaint(unit, id);
  const clock = complaint.clocks.find((it) => it.kind === kind);
  if (!clock) throw notFound('clock');
  if (clock.answeredAt) throw problem('conflict', 'This reply went out already; what was sent stays on record.');
  return { complaint, clock };
}

async function saveClock(
  { tx }: Unit,
  id: string,
  version: number,
  data: Prisma.ComplaintClockUncheckedUpdateManyInput,
): Promise<void> {
  const { count } = await tx.complaintClock.updateMany({
    where: { id, version, answeredAt: null },
    data: { ...data, version: { increment: 1 } },
  });
  if (count === 0) throw changedMeanwhile();
}

export const keepStep = async (
  { tx, actor }: Unit,
  clock: { id: string },
  plantId: string,
  step: (typeof clockSteps)[number],
  at: Date,
  note: string | null,
): Promise<void> => {
  await tx.complaintClockEvent.create({
    data: { id: newId(), plantId, clockId: clock.id, step, at, actor: actor.name, note },
  });
};

export async function pauseClock(
  unit: Unit,
  id: string,
  kind: Reply,
  version: number,
  reason: string,
): Promise<Complaint> {
  const { complaint, clock } = await openClock(unit, id, kind);
  if (clock.pausedAt) throw problem('conflict', 'This clock stands still already.');
  if (unit.at > clock.dueAt)
    throw problem(
      'conflict',
      'This clock has run out and cannot be stopped any more. Answer it; the delay stays on record.',
    );
  await saveClock(unit, clock.id, version, { pausedAt: unit.at, pauseReason: reason });
  await keepStep(unit, clock, complaint.plantId, 'paused', unit.at, reason);
  return finish(unit, 'clock paused', complaint, id);
}

/** Lets a paused clock run on from a moment: its working minutes left begin to count again. */
async function runOn(
  unit: Unit,
  { complaint, clock }: Opened,
  at: Date,
  note: string | null,
): Promise<Prisma.ComplaintClockUncheckedUpdateManyInput> {
  await keepStep(unit, clock, complaint.plantId, 'resumed', at, note);
  const calendar = await workingCalendar(unit.tx, complaint.plantId);
  const stored = await unit.tx.complaintClock.findUniqueOrThrow({ where: { id: clock.id } });
  return { pausedAt: null, pauseReason: null, ...(await reckonAnew(unit, stored, calendar)) };
}

export async function resumeClock(
  unit: Unit,
  id: string,
  kind: Reply,
  version: number,
  note: string | null,
): Promise<Complaint> {
  const opened = await openClock(unit, id, kind);
  if (!opened.clock.pausedAt) throw problem('conflict', 'This clock runs already.');
  await saveClock(unit, opened.clock.id, version, await runOn(unit, opened, unit.at, note));
  return finish(unit, 'clock resumed', opened.complaint, id);
}

export async function answerClock(
  unit: Unit,
  id: string,
  kind: Reply,
  version: number,
  { sent, answeredAt }: { sent: string; answeredAt: string | null },
): Promise<Complaint> {
  const opened = await openClock(unit, id, kind);
  const { complaint, clock } = opened;
  const at = answeredAt === null ? unit.at : new Date(answeredAt);
  if (at > unit.at || at < new Date(clock.startedAt))
    throw problem(
      'not_consistent',
      'Give the time at which the reply went out: after the complaint was received and not in the future.',
      [{ path: 'body/answeredAt', message: 'must lie between the receipt and now' }],
    );
  const resumed =
    clock.pausedAt && at >= clock.pausedAt
      ? await runOn(unit, opened, at, null)
      : { pausedAt: null, pauseReason: null };
  await saveClock(unit, clock.id, version, { ...resumed, answeredAt: at, answeredBy: unit.actor.id, sent });
  await keepStep(unit, clock, complaint.plantId, 'answered', at, sent);
  return finish(unit, 'clock answered', complaint, id);
}

export async function handOverClock(
  unit: Unit,
  id: string,
  kind: Reply,
  version: number,
  ownerId: string,
): Promise<Complaint> {
  const { complaint, clock } = await openClock(unit, id, kind);
  const colleagues = await listColleagues(unit.tx, complaint.plantId, 'complaints.write');
  const owner = colleagues.find((it) => it.id === ownerId);
  if (!owner) throw unknownReference('ownerId', 'person who may work on complaints at this plant');
  await saveClock(unit, clock.id, version, { ownerId });
  await keepStep(unit, clock, complaint.plantId, 'handed_over', unit.at, owner.name);
  const { zone } = await workingCalendar(unit.tx, complaint.plantId);
  await tellHandedOver(unit, complaint, { ...clock, ownerId }, zone);
  return finish(unit, 'clock handed over', complaint, id);
}
