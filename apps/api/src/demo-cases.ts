import { openAction } from '#api/features/actions/actions.service.ts';
import { addEvidence } from '#api/features/actions/evidence.service.ts';
import { moveAction, verifyAction } from '#api/features/actions/state.service.ts';
import { readParts, versionOfDiscipline } from '#api/features/cases/cases.repository.ts';
import { openCase } from '#api/features/cases/cases.service.ts';
import { savePart } from '#api/features/cases/parts.service.ts';
import { sign } from '#api/features/cases/signing.service.ts';
import type { Actor } from '#api/platform/actor.ts';
import { runUnit, type Unit } from '#api/platform/unit.ts';
import { caseParts, disciplines, type PartName, partNames } from '#contracts/case-parts.ts';
import { type Database, openDatabase } from '#db/client.ts';
import { dayNumber, isoDay } from '#seed/calendar.ts';
import { type CasePlan, casePlans } from '#seed/cases.ts';
import { caseContent } from './demo-case-content.ts';

async function peopleOf({ prisma }: Database, plant: CasePlan['plant'], plantId: string) {
  const actor = async (role: 'manager' | 'engineer'): Promise<Actor> => {
    const email = `${role}.${plant.toLowerCase()}@example.test`;
    const { id, name, locale } = await prisma.person.findUniqueOrThrow({ where: { email } });
    return { id, kind: 'person', name, locale, mustChangePassword: false, grants: [{ role, plantId }] };
  };
  return { manager: await actor('manager'), engineer: await actor('engineer') };
}

/** Reports of the planted fault, newest before the case was opened. */
async function reportsOf({ prisma }: Database, plan: CasePlan, plantId: string, before: string) {
  const line = await prisma.line.findFirst({ where: { plantId, code: plan.line } });
  return prisma.failure.findMany({
    where: {
      plantId,
      lineId: line?.id ?? null,
      cause: plan.cause,
      foundOn: { lt: new Date(before) },
      voidedAt: null,
      safety: plan.safety,
    },
    orderBy: { foundOn: 'desc' },
    take: 4,
    select: { id: true, housingId: true, terminalId: true },
  });
}

/** One case from its opening to where it stands, by the service's own rules. */
async function work(db: Database, plan: CasePlan, anchor: number): Promise<void> {
  const { id: plantId } = await db.prisma.plant.findUniqueOrThrow({ where: { code: plan.plant } });
  const { manager, engineer } = await peopleOf(db, plan.plant, plantId);
  const at = (days: number) => new Date(`${isoDay(Math.min(anchor, anchor - plan.opened + days))}T15:00:00Z`);
  const as = <Result>(actor: Actor, days: number, task: (unit: Unit) => Promise<Result>) =>
    runUnit(db, { actor, at: at(days) }, task);
  const reports = await reportsOf(db, plan, plantId, isoDay(anchor - plan.opened + 1));
  const customer = plan.customer ? await db.prisma.customer.findUnique({ where: { code: plan.customer } }) : null;
  const id = await as(engineer, 0, (unit) =>
    openCase(unit, {
      ...{ plantId, title: plan.title, safety: plan.safety, customerId: customer?.id ?? null },
      ...{ housingId: reports[0]?.housingId ?? null, terminalId: reports[0]?.terminalId ?? null },
      ...{ complaintIds: [], reportIds: reports.map((report) => report.id) },
    }),
  );
  const opened = (days: number) => isoDay(anchor - plan.opened + days);
  const content = caseContent(plan, engineer.name, manager.name, reports[0]?.id ?? null, opened);
  for (const discipline of disciplines.filter((it) => it < plan.written)) {
    for (const name of partNames.filter((part) => caseParts[part].discipline === discipline))
      await as(engineer, 2 + discipline * 3, (unit) =>
        savePart(unit, id, name as PartName, 0, content[name as keyof typeof content]),
      );
    if (discipline === 3)
      await act(as, id, plantId, engineer, manager, 'containment', `Sort stock: ${plan.title}`, opened(8));
    if (discipline === 6) await act(as, id, plantId, engineer, manager, 'corrective', plan.corrections[0], opened(18));
    if (discipline >= plan.signed) continue;
    const version = versionOfDiscipline(await readParts(db.prisma, id), discipline);
    await as(manager, 3 + discipline * 3, (unit) => sign(unit, id, discipline, version, 'quality'));
    if (discipline === 8) await as(manager, 30, (unit) => sign(unit, id, 8, version, 'plant_management'));
  }
}

type As = <Result>(actor: Actor, days: number, task: (unit: Unit) => Promise<Result>) => Promise<Result>;
/** An action of the case, carried out by the engineer and verified by the manager. */
async function act(
  as: As,
  caseId: string,
  plantId: string,
  engineer: Actor,
  manager: Actor,
  kind: 'containment' | 'corrective',
  title: string,
  dueOn: string,
): Promise<void> {
  const none = {
    complaintId: null,
    containmentId: null,
    reviewId: null,
    effortHours: null,
    cost: null,
    prevention: null,
  };
  let action = await as(manager, 2, (unit) =>
    openAction(unit, {
      ...none,
      plantId,
      kind,
      title,
      description: null,
      ownerId: engineer.id,
      dueOn,
      caseId,
      effect: null,
    }),
  );
  const move = async (state: 'under_way' | 'carried_out') => {
    action = await as(engineer, 7, (unit) => moveAction(unit, action.id, action.version, { state, reason: null }));
  };
  await move('under_way');
  await as(engineer, 7, (unit) =>
    addEvidence(unit, action.id, { text: 'Done and shown to the shift.', failureId: null }),
  );
  await move('carried_out');
  await as(manager, 8, (unit) =>
    verifyAction(unit, action.id, action.version, { passed: true, note: 'Looked at on the line, with the team.' }),
  );
}

/** 8D cases of the invented plants; mail that this would have sent is taken out. */
export async function workCases(url: string, anchorDay: string): Promise<void> {
  const db = await openDatabase(url, { poolSize: 4 });
  try {
    for (const plan of casePlans) await work(db, plan, dayNumber(anchorDay));
    await db.prisma.mail.deleteMany();
  } finally {
    await db.close();
  }
}
