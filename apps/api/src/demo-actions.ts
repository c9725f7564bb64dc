import { openAction } from '#api/features/actions/actions.service.ts';
import { watchAction } from '#api/features/actions/effects/watch.service.ts';
import { addEvidence } from '#api/features/actions/evidence.service.ts';
import { moveAction, verifyAction } from '#api/features/actions/state.service.ts';
import type { Actor } from '#api/platform/actor.ts';
import { systemActor } from '#api/platform/jobs/system-actor.ts';
import { runUnit, type Unit } from '#api/platform/unit.ts';
import type { ActionOf } from '#contracts/actions.ts';
import { type Database, openDatabase } from '#db/client.ts';
import { type ActionPlan, otherActions, plantedActions } from '#seed/actions.ts';
import { type DayNumber, dayNumber, isoDay } from '#seed/calendar.ts';
import { makeWorld } from '#seed/world.ts';

/** Days between the looks that the demo keeps of a planted fix. */
const lookDays = 21;

interface Ids {
  plant: string;
  manager: Actor;
  engineer: Actor;
  lines: ReadonlyMap<string, string>;
  housings: ReadonlyMap<string, string>;
}

async function idsOf({ prisma }: Database, plant: string): Promise<Ids> {
  const { id } = await prisma.plant.findUniqueOrThrow({ where: { code: plant } });
  const actor = async (role: 'manager' | 'engineer'): Promise<Actor> => {
    const email = `${role}.${plant.toLowerCase()}@example.test`;
    const person = await prisma.person.findUniqueOrThrow({ where: { email } });
    const grants = [{ role, plantId: id }];
    return {
      id: person.id,
      kind: 'person',
      name: person.name,
      locale: person.locale,
      mustChangePassword: false,
      grants,
    };
  };
  const lines = await prisma.line.findMany({ where: { plantId: id } });
  const housings = await prisma.housing.findMany();
  return {
    plant: id,
    manager: await actor('manager'),
    engineer: await actor('engineer'),
    lines: new Map(lines.map((line) => [line.code, line.id])),
    housings: new Map(housings.map((housing) => [housing.code, housing.id])),
  };
}

/** Half past three in the afternoon, Greenwich: working hours or near them at most plants. */
const instant = (day: DayNumber): Date => new Date(`${isoDay(day)}T15:30:00Z`);

function effectOf(plan: ActionPlan, ids: Ids, anchor: DayNumber) {
  if (!plan.effect) return null;
  const { cause, line, housing, beforeDays, cleanPoint, reduction } = plan.effect;
  const none = { subCause: null, terminalId: null, toolId: null, customerId: null, sources: [] };
  return {
    scope: { ...none, cause, lineId: ids.lines.get(line)!, housingId: housing && ids.housings.get(housing)! },
    before: { from: isoDay(anchor - plan.opened - beforeDays), to: isoDay(anchor - plan.opened) },
    cleanPoint: isoDay(anchor - cleanPoint),
    reduction,
    onRecurrence: 'tell' as const,
  };
}

/** One action from its opening to where it stands, each step at its own time, by the service's own rules. */
async function act(db: Database, plan: ActionPlan, ids: Ids, anchor: DayNumber): Promise<void> {
  const [owner, other] = plan.byManager ? [ids.manager, ids.engineer] : [ids.engineer, ids.manager];
  const as = <Result>(actor: Actor, day: DayNumber, work: (unit: Unit) => Promise<Result>) =>
    runUnit(db, { actor, at: instant(day) }, work);
  const opened = anchor - plan.opened;
  const origin = { complaintId: null, containmentId: null, caseId: null, reviewId: null };
  let action: ActionOf = await as(other, opened, (unit) =>
    openAction(unit, {
      ...origin,
      plantId: ids.plant,
      kind: plan.kind,
      title: plan.title,
      description: plan.description || null,
      ownerId: owner.id,
      dueOn: isoDay(anchor - plan.due),
      effortHours: plan.hours,
      cost: null,
      prevention: plan.prevention,
      effect: effectOf(plan, ids, anchor),
    }),
  );
  const { id } = action;
  const done = Math.min(anchor, anchor - plan.due);
  const move = async (state: 'under_way' | 'held_up' | 'carried_out' | 'given_up', day: DayNumber) => {
    action = await as(owner, day, (unit) => moveAction(unit, id, action.version, { state, reason: plan.reason }));
  };
  if (plan.state === 'agreed') return;
  if (plan.state === 'held_up' || plan.state === 'given_up') return move(plan.state, Math.min(anchor, opened + 5));
  await move('under_way', Math.min(anchor, opened + 1));
  if (plan.state === 'under_way') return;
  await as(owner, done, (unit) => addEvidence(unit, id, { text: plan.evidence, failureId: null }));
  await move('carried_out', done);
  if (plan.state === 'verified')
    await as(other, Math.min(anchor, done + 2), (unit) =>
      verifyAction(unit, id, action.version, { passed: true, note: plan.evidence }),
    );
  if (!plan.effect) return;
  for (let day = anchor - plan.effect.cleanPoint + lookDays; day <= anchor; day += lookDays)
    await as(systemActor, day, (unit) => watchAction(unit, id));
}

/**
 * Actions of the invented plants. They pass through the service; of what it told meanwhile, the mail is taken out, since these
 * people have no mailbox, and what is older than two weeks counts as read.
 */
export async function keepActions(url: string, anchorDay: string, seed = 1): Promise<void> {
  const anchor = dayNumber(anchorDay);
  const db = await openDatabase(url, { poolSize: 4 });
  try {
    const plans = [...plantedActions, ...otherActions(makeWorld(seed, anchor))];
    for (const [plant, own] of Map.groupBy(plans, (plan) => plan.plant)) {
      const ids = await idsOf(db, plant);
      for (const plan of own.toSorted((a, b) => b.opened - a.opened)) await act(db, plan, ids, anchor);
    }
    await db.prisma.mail.deleteMany();
    const read = instant(anchor - 14);
    await db.prisma.notice.updateMany({ where: { at: { lt: read } }, data: { readAt: read } });
  } finally {
    await db.close();
  }
}
