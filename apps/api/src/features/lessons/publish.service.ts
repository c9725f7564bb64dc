/** What closing a case gives to the group: its lesson, and the question to every plant that may have the same. */

import { recordChange } from '#api/platform/audit.ts';
import { maskOthers } from '#api/platform/document/mask.ts';
import { newId } from '#api/platform/ids.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { CaseContent } from '#contracts/case-parts.ts';
import { sql, txExecute } from '#db/sql.ts';
import { plantsAsked } from './asked.queries.ts';

interface ClosedCase {
  id: string;
  plantId: string;
  number: string;
  housingId: string | null;
  terminalId: string | null;
}

/** Names of customers and amounts of money never leave the plant with a lesson. */
async function neutral({ tx }: Unit, { lesson }: CaseContent) {
  const customers = await tx.customer.findMany({ select: { code: true, name: true } });
  const clean = (text: string) => maskOthers(text, { customers, locale: 'en' }).text;
  return {
    title: clean(lesson.title),
    problem: clean(lesson.problem),
    rootCause: clean(lesson.rootCause),
    checkText: clean(lesson.check),
  };
}

export async function publishLesson(unit: Unit, found: ClosedCase, content: CaseContent): Promise<void> {
  const { tx, at } = unit;
  if (content.lesson.notNeeded === null) {
    const { reach, root_cause: root } = content;
    const words = await neutral(unit, content);
    const row = {
      ...words,
      cause: root.occurrence.cause ?? ('undetermined' as const),
      subCause: root.occurrence.subCause,
      effects: await effectsOf(unit, found.id),
      housingIds: [...new Set([...reach.housingIds, ...(found.housingId ? [found.housingId] : [])])],
      terminalIds: [...new Set([...reach.terminalIds, ...(found.terminalId ? [found.terminalId] : [])])],
      toolTypes: reach.toolTypes,
      publishedAt: at,
      withdrawnAt: null,
    };
    await tx.lesson.upsert({
      where: { caseId: found.id },
      create: { id: newId(), caseId: found.id, plantId: found.plantId, ...row },
      update: row,
    });
    await askPlants(unit, found, content, words);
  }
}

async function effectsOf({ tx }: Unit, caseId: string): Promise<string[]> {
  const links = await tx.eightDCaseReport.findMany({ where: { caseId }, select: { failureId: true } });
  const reports = await tx.failure.findMany({
    where: { id: { in: links.map(({ failureId }) => failureId) }, effect: { not: null } },
    select: { effect: true },
    distinct: ['effect'],
  });
  return reports.flatMap(({ effect }) => effect ?? []);
}

/** Every other plant that has the tool type, builds the part or may have the practice; one that has answered is not asked again. */
async function askPlants(
  unit: Unit,
  found: ClosedCase,
  { reach }: CaseContent,
  words: Awaited<ReturnType<typeof neutral>>,
): Promise<void> {
  const { tx, at } = unit;
  if (reach.notNeeded !== null) return;
  const asked = await plantsAsked(tx, found.plantId, reach);
  const before = await tx.readAcross.findMany({ where: { caseId: found.id, withdrawnAt: null } });
  const fresh = asked.filter(({ plantId }) => !before.some((it) => it.plantId === plantId));
  for (const { plantId, why } of fresh) {
    const id = newId();
    await tx.readAcross.create({ data: { id, caseId: found.id, plantId, why, ...words, askedAt: at } });
    await recordChange(unit, {
      ...{ action: 'asked', entity: 'read_across', entityId: id, label: words.title, plantId },
      before: null,
      after: { why, ...words },
    });
  }
}

/** A case that is open again teaches nothing yet; questions still open are taken back, answers stay. */
export async function withdrawLesson({ tx, at }: Unit, caseId: string): Promise<void> {
  await tx.lesson.updateMany({ where: { caseId }, data: { withdrawnAt: at } });
  await txExecute(
    tx,
    sql`update read_across set withdrawn_at = ${at}, version = version + 1
      where case_id = ${caseId}::uuid and answer is null and withdrawn_at is null`,
  );
}
