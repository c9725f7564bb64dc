import { reckonClock } from '#analysis/calendar/reply-clock.ts';
import type { WorkingCalendar } from '#analysis/calendar/working-time.ts';
import { workingCalendar } from '#api/features/plant-calendar/working-calendar.service.ts';
import { newId } from '#api/platform/ids.ts';
import type { Unit } from '#api/platform/unit.ts';
import { type Reply, type ReplyTime, ReplyTimes, replies } from '#contracts/reply-times.ts';
import type { Tx } from '#db/client.ts';
import { levelAt, pausesOf } from './clocks.rules.ts';
import { saveReckoned, waitingClocks } from './reckoning.queries.ts';

export async function replyTimesOf(tx: Tx, customerId: string): Promise<ReplyTimes> {
  const customer = await tx.customer.findUniqueOrThrow({ where: { id: customerId }, select: { replyTimes: true } });
  return ReplyTimes.parse(customer.replyTimes);
}

export async function startClocks(
  { tx }: Unit,
  complaint: { id: string; plantId: string; customerId: string; ownerId: string; receivedAt: Date },
): Promise<void> {
  const times = await replyTimesOf(tx, complaint.customerId);
  const calendar = await workingCalendar(tx, complaint.plantId);
  await tx.complaintClock.createMany({
    data: replies.map((kind) => ({
      id: newId(),
      plantId: complaint.plantId,
      complaintId: complaint.id,
      kind,
      ...times[kind],
      ownerId: complaint.ownerId,
      startedAt: complaint.receivedAt,
      ...reckonClock(times[kind], complaint.receivedAt, [], calendar),
    })),
  });
}

interface Stored extends ReplyTime {
  id: string;
  startedAt: Date;
  told: number;
}

type Step = { step: string; at: Date };
type Anew = { dueAt: Date; shortAt: Date; urgentAt: Date; told: number };

const reckon = (clock: Stored, events: readonly Step[], calendar: WorkingCalendar, at: Date): Anew => {
  const reckoned = reckonClock(clock, clock.startedAt, pausesOf(events), calendar);
  return { ...reckoned, told: Math.min(clock.told, levelAt(reckoned, at)) };
};

/** When a clock is due as things are now, and who of those told before would be told again. */
export async function reckonAnew({ tx, at }: Unit, clock: Stored, calendar: WorkingCalendar): Promise<Anew> {
  const events = await tx.complaintClockEvent.findMany({ where: { clockId: clock.id }, orderBy: { id: 'asc' } });
  return reckon(clock, events, calendar, at);
}

/** The clocks of open complaints that wait for an answer, reckoned anew after the plant's calendar changed. */
export async function reckonPlantClocks({ tx, at }: Unit, plantId: string): Promise<void> {
  const calendar = await workingCalendar(tx, plantId);
  const { clocks, events } = await waitingClocks(tx, plantId);
  const steps = Map.groupBy(events, ({ clockId }) => clockId);
  await saveReckoned(
    tx,
    clocks.map((clock) => ({ id: clock.id, ...reckon(clock, steps.get(clock.id) ?? [], calendar, at) })),
  );
}

/** The clocks of a complaint that wait for an answer, after its customer or the time it was received changed. */
export async function restartClocks(
  unit: Unit,
  complaint: { id: string; plantId: string; receivedAt: Date },
  times: ReplyTimes,
): Promise<void> {
  const { tx } = unit;
  const calendar = await workingCalendar(tx, complaint.plantId);
  const waiting = await tx.complaintClock.findMany({ where: { complaintId: complaint.id, answeredAt: null } });
  for (const clock of waiting) {
    const length = times[clock.kind as Reply];
    const changed = { ...clock, ...length, startedAt: complaint.receivedAt };
    await tx.complaintClock.update({
      where: { id: clock.id },
      data: {
        ...length,
        startedAt: complaint.receivedAt,
        ...(await reckonAnew(unit, changed, calendar)),
        version: { increment: 1 },
      },
    });
  }
}
