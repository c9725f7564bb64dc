import type { FastifyInstance } from 'fastify';
import { systemActor } from '#api/platform/jobs/system-actor.ts';
import { runUnit, type Unit } from '#api/platform/unit.ts';
import { levelAt } from './clocks.rules.ts';
import { keepStep } from './clocks.service.ts';
import { runningShort, type ShortClock } from './escalation.queries.ts';
import { tellRunningOut } from './telling.service.ts';

/** Tells who is to be told about one clock, unless its state changed meanwhile. Told once for each level and due time. */
async function escalate(unit: Unit, clock: ShortClock): Promise<void> {
  const level = levelAt(clock, unit.at);
  if (level === 0) return;
  const { count } = await unit.tx.complaintClock.updateMany({
    where: { id: clock.id, version: clock.version, told: clock.told, answeredAt: null, pausedAt: null },
    data: { told: level },
  });
  if (count === 0) return;
  await tellRunningOut(unit, { ...clock, id: clock.complaintId }, clock, clock.zone, level);
  await keepStep(unit, clock, clock.plantId, level === 1 ? 'owner_told' : 'managers_told', unit.at, null);
}

/** Looks for clocks that run short or are about to run out and tells the owner, then the plant's managers. */
export async function escalateClocks({ db }: Pick<FastifyInstance, 'db'>, at: Date): Promise<number> {
  const clocks = await runningShort(db, at);
  for (const clock of clocks) await runUnit(db, { actor: systemActor, at }, (unit) => escalate(unit, clock));
  return clocks.length;
}
