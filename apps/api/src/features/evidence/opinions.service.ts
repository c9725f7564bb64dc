import { z } from 'zod';
import { openReport, readBehind } from '#api/features/failures/open-report.service.ts';
import { type Actor, holds, plantsWith, requirePlant } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { newId } from '#api/platform/ids.ts';
import { notFound, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Cause } from '#contracts/taxonomy.ts';
import type { Database } from '#db/client.ts';
import type { Opinion } from '#db/generated/client.ts';
import { empty, queryRows, sql, txRows } from '#db/sql.ts';
import { readFindings } from './evidence.service.ts';

const Task = z.object({
  id: z.string(),
  failureId: z.string().nullable(),
  number: z.string().nullable(),
  plantCode: z.string(),
  askedAt: z.coerce.date().transform((at) => at.toISOString()),
});
const Picked = z.object({
  id: z.string(),
  plantId: z.string(),
  failureId: z.string(),
  cause: z.string(),
  personId: z.string().nullable(),
});

interface Ask {
  plant: string[];
  from: string;
  to: string;
  sample: number;
}

/** Draws confirmed reports at random and asks for a second opinion on each. */
export async function askOpinions(unit: Unit, { plant, from, to, sample }: Ask): Promise<{ asked: number }> {
  for (const plantId of plant) requirePlant(unit.actor, 'failures.sort', plantId);
  const picked = await txRows(
    unit.tx,
    sql`select c.id, c.plant_id as "plantId", c.failure_id as "failureId", c.cause, c.person_id as "personId" from confirmation c
      join failure f on f.plant_id = c.plant_id and f.id = c.failure_id
      where c.superseded_at is null and f.voided_at is null and c.plant_id = any(${plant}::uuid[]) and f.found_on >= ${from}::date and f.found_on < ${to}::date
        and not exists (select 1 from opinion o where o.plant_id = c.plant_id and o.confirmation_id = c.id)
      order by random() limit ${sample}`,
    Picked,
  );
  await unit.tx.opinion.createMany({
    data: picked.map((it) => ({
      id: newId(),
      plantId: it.plantId,
      failureId: it.failureId,
      confirmationId: it.id,
      firstCause: it.cause as Cause,
      firstPersonId: it.personId,
      askedAt: unit.at,
      askedBy: unit.actor.name,
    })),
  });
  await recordChange(unit, {
    action: 'second opinions asked',
    entity: 'opinion',
    entityId: newId(),
    label: `${picked.length} reports`,
    plantId: plant.length === 1 ? plant[0]! : null,
    before: null,
    after: { plant, from, to, asked: picked.length },
  });
  return { asked: picked.length };
}

/**
 * Opinions that this person may give: at their plants, and not on their own decisions. Which report it is about is told to who
 * has taken it upon them.
 */
export async function waitingFor(db: Database, actor: Actor, id?: string): Promise<z.output<typeof Task>[]> {
  const scope = plantsWith(actor, 'failures.sort');
  return queryRows(
    db.pool,
    sql`select o.id, t.failure_id as "failureId", case when t.failure_id is not null then f.number end as number, p.code as "plantCode",
        o.asked_at as "askedAt"
      from opinion o join failure f on f.plant_id = o.plant_id and f.id = o.failure_id join plant p on p.id = o.plant_id
      left join opinion_taken t on t.opinion_id = o.id and t.person_id = ${actor.id}::uuid
      where o.given_at is null and f.voided_at is null and o.first_person_id is distinct from ${actor.id}::uuid ${scope === 'all' ? empty : sql`and o.plant_id = any(${scope}::uuid[])`}
        ${id ? sql`and o.id = ${id}::uuid` : empty}
      order by o.id limit 200`,
    Task,
  );
}

/** Takes an opinion upon the actor: from now on the report's cause is hidden from them until it is given. */
export async function takeOpinion(unit: Unit, id: string): Promise<void> {
  const { tx, actor, at } = unit;
  const opinion = await tx.opinion.findFirst({ where: { id } });
  if (!opinion || !holds(actor, 'failures.read', opinion.plantId)) throw notFound('second opinion');
  requirePlant(actor, 'failures.sort', opinion.plantId);
  requireOpen(opinion, actor);
  const { count } = await tx.opinionTaken.createMany({
    data: [{ opinionId: id, personId: actor.id, plantId: opinion.plantId, failureId: opinion.failureId, takenAt: at }],
    skipDuplicates: true,
  });
  if (count === 0) return;
  const report = await tx.failure.findFirstOrThrow({
    where: { id: opinion.failureId, plantId: opinion.plantId },
    select: { number: true },
  });
  await recordChange(unit, {
    action: 'second opinion taken',
    entity: 'failure',
    entityId: opinion.failureId,
    label: report.number,
    plantId: opinion.plantId,
    before: null,
    after: null,
  });
}

function requireOpen({ firstPersonId, givenAt }: Opinion, actor: Actor): void {
  if (actor.id === firstPersonId)
    throw problem('conflict', 'The first decision was yours. A second opinion comes from somebody else.');
  if (givenAt) throw problem('conflict', 'Somebody gave this opinion already. Take the next one.');
}

/** The report without its cause, proof, history and suggestion. */
export async function readBlind(db: Database, actor: Actor, id: string) {
  const [task] = await waitingFor(db, actor, id);
  if (!task) throw notFound('second opinion');
  const { failureId, number } = task;
  if (failureId === null || number === null)
    throw problem(
      'conflict',
      'Take this opinion upon you first. Then its report opens, and its cause is hidden from you.',
    );
  const report = await readBehind(db, actor, failureId);
  const codes = await db.prisma.$transaction([
    db.prisma.housing.findMany({ where: { id: report.housingId ?? newId() }, select: { code: true } }),
    db.prisma.terminal.findMany({ where: { id: report.terminalId ?? newId() }, select: { code: true } }),
    db.prisma.wire.findMany({ where: { id: report.wireId ?? newId() }, select: { code: true } }),
  ]);
  const [housing, terminal, wire] = codes.map(([row]) => row?.code ?? null);
  return {
    task: { ...task, failureId, number },
    findings: await readFindings(db.prisma, report),
    note: report.note,
    housing: housing ?? null,
    terminal: terminal ?? null,
    wire: wire ?? null,
    found: report.found,
    cavities: report.cavities,
    photos: report.photos.map((photo) => photo.id),
  };
}

export async function giveOpinion(unit: Unit, id: string, cause: Cause): Promise<void> {
  const { tx, actor, at } = unit;
  const opinion = await tx.opinion.findFirst({ where: { id } });
  if (!opinion || !holds(actor, 'failures.read', opinion.plantId)) throw notFound('second opinion');
  requirePlant(actor, 'failures.sort', opinion.plantId);
  requireOpen(opinion, actor);
  if (!(await tx.opinionTaken.findFirst({ where: { opinionId: id, personId: actor.id } })))
    throw problem('conflict', 'Take this opinion upon you first, look at the findings, then give it.');
  const { count } = await tx.opinion.updateMany({
    where: { id, plantId: opinion.plantId, givenAt: null },
    data: { cause, givenBy: actor.id, givenAt: at },
  });
  if (count === 0) throw problem('conflict', 'Somebody gave this opinion already. Take the next one.');
  const report = await openReport(unit, 'failures.sort', opinion.failureId);
  await recordChange(unit, {
    action: 'second opinion given',
    entity: 'failure',
    entityId: report.id,
    label: report.number,
    plantId: report.plantId,
    before: null,
    after: { cause },
  });
}
