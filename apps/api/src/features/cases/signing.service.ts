import { publishLesson, withdrawLesson } from '#api/features/lessons/publish.service.ts';
import { safetyPersonOf } from '#api/features/plant-calendar/product-safety.service.ts';
import { recordChange } from '#api/platform/audit.ts';
import { newId } from '#api/platform/ids.ts';
import { changedMeanwhile, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Discipline, SignRole } from '#contracts/case-parts.ts';
import { caseTerms } from '#contracts/case-terms.en.ts';
import { stageNumber } from '#contracts/taxonomy.ts';
import { readFacts, readParts, versionOfDiscipline } from './cases.repository.ts';
import { type CaseFacts, fullySigned, missingIn } from './needs.rules.ts';
import { lockForWrite, openForWrite, type StoredCase } from './open-case.service.ts';
import { type Refusal, refusalOf } from './signing.rules.ts';

const words: Record<Refusal, string> = {
  no_such_role: 'This discipline is not signed in that name.',
  signed_already: 'It is signed in that name already.',
  no_safety_person:
    'Nobody answers for product safety at this plant. A manager names that person under master data, plant; then that person signs.',
  not_safety_person: 'Only the person who answers for product safety at this plant signs in that name.',
  alone: 'The closure of a safety-relevant case takes two people: one for quality, another for the plant’s management.',
};

export async function sign(
  unit: Unit,
  caseId: string,
  discipline: Discipline,
  version: number,
  role: SignRole,
): Promise<void> {
  const { tx, actor, at } = unit;
  const found = await openForWrite(unit, role === 'product_safety' ? 'cases.write' : 'cases.sign', caseId);
  if (actor.kind !== 'person')
    throw problem('not_allowed', 'A signature is a person’s. Sign in instead of using a token.');
  const parts = await readParts(tx, caseId);
  if (versionOfDiscipline(parts, discipline) !== version) throw changedMeanwhile();
  const facts = await readFacts(tx, caseId, parts);
  const missing = missingIn(facts, discipline);
  if (missing.length > 0)
    throw problem(
      'conflict',
      `D${discipline} cannot be signed yet. It lacks: ${missing.map((need) => caseTerms.need[need]).join('; ')}.`,
    );
  const safetyPerson = await safetyPersonOf(tx, found.plantId);
  const present = await tx.eightDSignature.findMany({ where: { caseId, discipline, voidedAt: null } });
  const refusal = refusalOf({
    ...{ discipline, role, signerId: actor.id, safety: facts.safety },
    safetyPersonId: safetyPerson?.id ?? null,
    present: present.map((it) => ({ role: it.role as SignRole, signedBy: it.signedBy })),
  });
  if (refusal) throw problem('conflict', words[refusal]);
  await tx.eightDSignature.create({
    data: { id: newId(), caseId, discipline, role, signedBy: actor.id, signer: actor.name, signedAt: at },
  });
  await recordChange(unit, {
    ...{ action: 'signed', entity: 'case', entityId: caseId, label: found.number, plantId: found.plantId },
    before: null,
    after: { discipline, role, version },
  });
  await keepDecided(unit, found, facts);
  const signed = new Map(facts.signed).set(discipline, [...(facts.signed.get(discipline) ?? []), role]);
  if (discipline === 8 && fullySigned({ signed, safety: facts.safety }, 8)) await close(unit, found, facts);
}

/** What lists and lessons ask of the root cause, kept beside the case. */
async function keepDecided({ tx }: Unit, { id }: StoredCase, { content, safety }: CaseFacts): Promise<void> {
  const { occurrence, escape: passed } = content.root_cause;
  await tx.eightDCase.update({
    where: { id },
    data: {
      cause: occurrence.cause,
      subCause: occurrence.subCause,
      escapeStage: passed.stage ? stageNumber(passed.stage) : null,
      safety,
    },
  });
}

async function close(unit: Unit, found: StoredCase, { content }: CaseFacts): Promise<void> {
  await unit.tx.eightDCase.update({
    where: { id: found.id },
    data: { state: 'closed', closedAt: unit.at, version: { increment: 1 } },
  });
  await recordChange(unit, {
    ...{ action: 'closed', entity: 'case', entityId: found.id, label: found.number, plantId: found.plantId },
    before: { state: 'open' },
    after: { state: 'closed' },
  });
  await publishLesson(unit, found, content);
}

/** Signatures of the discipline and of every later one no longer hold; a closed case is open again. */
export async function reopen(
  unit: Unit,
  caseId: string,
  discipline: Discipline,
  version: number,
  reason: string,
): Promise<void> {
  const { tx, actor, at } = unit;
  const found = await lockForWrite(unit, 'cases.sign', caseId);
  if (found.state === 'dropped') throw problem('conflict', 'The case was dropped and stays as it is.');
  if (versionOfDiscipline(await readParts(tx, caseId), discipline) !== version) throw changedMeanwhile();
  const signed = await tx.eightDSignature.count({ where: { caseId, discipline, voidedAt: null } });
  if (signed === 0) throw problem('conflict', `D${discipline} is not signed, so there is nothing to reopen.`);
  const voided = await tx.eightDSignature.updateManyAndReturn({
    where: { caseId, discipline: { gte: discipline }, voidedAt: null },
    data: { voidedAt: at, voidedBy: actor.name, voidReason: reason },
  });
  if (found.state === 'closed') {
    await tx.eightDCase.update({
      where: { id: caseId },
      data: { state: 'open', closedAt: null, version: { increment: 1 } },
    });
    await withdrawLesson(unit, caseId);
  }
  await recordChange(unit, {
    ...{ action: 'reopened', entity: 'case', entityId: caseId, label: found.number, plantId: found.plantId },
    before: { state: found.state, signatures: voided.map((it) => ({ discipline: it.discipline, signer: it.signer })) },
    after: { state: 'open', discipline, reason },
  });
}
