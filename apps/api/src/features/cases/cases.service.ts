import { DateTime } from 'luxon';
import { requirePlant } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { newId } from '#api/platform/ids.ts';
import { changedMeanwhile, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Discipline, WhyTree } from '#contracts/case-parts.ts';
import type { CaseHeader, NewCase } from '#contracts/cases.ts';
import { isSafetyRelevant, readParts, takeCaseNumber } from './cases.repository.ts';
import { requireHeader, requireUnused } from './links.service.ts';
import { lockForWrite, openForWrite } from './open-case.service.ts';

async function writeLinks({ tx }: Unit, caseId: string, plantId: string, header: CaseHeader): Promise<void> {
  await tx.eightDCaseReport.deleteMany({ where: { caseId } });
  await tx.eightDCaseComplaint.deleteMany({ where: { caseId } });
  await tx.eightDCaseReport.createMany({
    data: [...new Set(header.reportIds)].map((failureId) => ({ caseId, plantId, failureId })),
  });
  await tx.eightDCaseComplaint.createMany({
    data: [...new Set(header.complaintIds)].map((complaintId) => ({ caseId, complaintId })),
  });
  if (await isSafetyRelevant(tx, caseId)) await tx.eightDCase.update({ where: { id: caseId }, data: { safety: true } });
}

export async function openCase(unit: Unit, input: NewCase): Promise<string> {
  const { tx, actor, at } = unit;
  const { plantId, complaintIds: _, reportIds: __, ...fields } = input;
  requirePlant(actor, 'cases.write', plantId);
  const plant = await tx.plant.findFirst({ where: { id: plantId, retiredAt: null } });
  if (!plant) throw problem('not_consistent', 'The plant is retired. Open the case at a plant that is working.');
  await requireHeader(tx, plantId, input);
  const id = newId();
  const number = await takeCaseNumber(tx, plant.code, plantId, DateTime.fromJSDate(at, { zone: plant.zone }).year);
  await tx.eightDCase.create({
    data: { id, plantId, number, ...fields, openedAt: at, openedBy: actor.id, openedByName: actor.name },
  });
  await writeLinks(unit, id, plantId, input);
  await recordChange(unit, {
    ...{ action: 'opened', entity: 'case', entityId: id, label: number, plantId },
    before: null,
    after: input,
  });
  return id;
}

export async function updateCase(unit: Unit, id: string, version: number, header: CaseHeader): Promise<void> {
  const { tx } = unit;
  const before = await openForWrite(unit, 'cases.write', id);
  if (before.version !== version) throw changedMeanwhile();
  await requireHeader(tx, before.plantId, header);
  if (before.safety && !header.safety)
    throw problem('conflict', 'A case once marked as safety-relevant stays so.', [
      { path: 'body/safety', message: 'cannot be taken back' },
    ]);
  const links = { reportIds: await reportsOf(unit, id), complaintIds: await complaintsOf(unit, id) };
  await requireKept(unit, id, links.reportIds, header.reportIds);
  const { complaintIds: _, reportIds: __, ...fields } = header;
  await tx.eightDCase.update({ where: { id }, data: { ...fields, version: { increment: 1 } } });
  await writeLinks(unit, id, before.plantId, header);
  await recordChange(unit, {
    ...{ action: 'changed', entity: 'case', entityId: id, label: before.number, plantId: before.plantId },
    before: { ...before, ...links },
    after: header,
  });
}

const reportsOf = async ({ tx }: Unit, caseId: string) =>
  (await tx.eightDCaseReport.findMany({ where: { caseId } })).map(({ failureId }) => failureId);
const complaintsOf = async ({ tx }: Unit, caseId: string) =>
  (await tx.eightDCaseComplaint.findMany({ where: { caseId } })).map(({ complaintId }) => complaintId);

/** A report that a tree rests on, itself or by its photos, is not unlinked. */
async function requireKept({ tx }: Unit, id: string, before: string[], after: string[]): Promise<void> {
  const gone = before.filter((failureId) => !after.includes(failureId));
  if (gone.length === 0) return;
  const photos = await tx.photo.findMany({ where: { failureId: { in: gone } }, select: { id: true } });
  const parts = await readParts(tx, id);
  requireUnused(
    [parts.occurrence, parts.non_detection, parts.system].map((it) => it.content as WhyTree),
    (link) =>
      link.kind === 'photo'
        ? photos.some((photo) => photo.id === link.photoId)
        : 'failureId' in link && gone.includes(link.failureId),
  );
}

export async function dropCase(unit: Unit, id: string, version: number, reason: string): Promise<void> {
  const { tx, actor } = unit;
  const before = await openForWrite(unit, 'cases.sign', id);
  if (before.version !== version) throw changedMeanwhile();
  if (before.openedBy === actor.id && (await isSafetyRelevant(tx, id)))
    throw problem('conflict', 'You opened this safety-relevant case. Somebody else has to drop it.');
  await tx.eightDCase.update({
    where: { id },
    data: { state: 'dropped', dropReason: reason, closedAt: unit.at, version: { increment: 1 } },
  });
  await recordChange(unit, {
    ...{ action: 'dropped', entity: 'case', entityId: id, label: before.number, plantId: before.plantId },
    before: { state: before.state },
    after: { state: 'dropped', reason },
  });
}

export async function addComment(unit: Unit, id: string, discipline: Discipline, text: string) {
  const found = await lockForWrite(unit, 'cases.write', id);
  if (found.state === 'dropped') throw problem('conflict', 'The case was dropped and stays as it is.');
  const comment = { id: newId(), discipline, text };
  await unit.tx.eightDComment.create({
    data: { ...comment, caseId: id, authorId: unit.actor.id, author: unit.actor.name, at: unit.at },
  });
  await recordChange(unit, {
    ...{ action: 'commented', entity: 'case', entityId: id, label: found.number, plantId: found.plantId },
    before: null,
    after: { discipline, text },
  });
  return { ...comment, author: unit.actor.name, at: unit.at.toISOString() };
}
