import { safetyPersonOf } from '#api/features/plant-calendar/product-safety.service.ts';
import { notFound, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Complaint } from '#contracts/complaints.ts';
import type { StoredComplaint } from './complaint.queries.ts';
import { closingBlocksOf, mayConsent } from './consent.rules.ts';
import { finish, saveComplaint } from './finish.ts';
import { openComplaint, writableComplaint } from './open-complaint.service.ts';
import { askConsent } from './safety.service.ts';
import { tellConsentAnswered } from './telling.service.ts';

const words = {
  clock_running: 'a reply is still owed: answer its clock, or stop it with the reason',
  safety_unseen: 'the person responsible for product safety has not acknowledged it yet',
  consent_waiting: 'a consent asked for waits for its answer',
};

function requireClosable(complaint: StoredComplaint): void {
  const blocks = closingBlocksOf(complaint);
  if (blocks.length > 0)
    throw problem('conflict', `It cannot be closed yet: ${blocks.map((block) => words[block]).join('; ')}.`);
}

/** Closes it; one that is safety-relevant is closed by the consent of a second person. */
export async function closeComplaint(unit: Unit, id: string, version: number, note: string): Promise<Complaint> {
  const before = await openComplaint(unit, id);
  requireClosable(before);
  if (before.safety) {
    await saveComplaint(unit, id, version, {});
    await askConsent(unit, before, 'close', note);
    return finish(unit, 'closing asked for', before, id);
  }
  await saveComplaint(unit, id, version, { closedAt: unit.at, closedBy: unit.actor.id, closingNote: note });
  return finish(unit, 'closed', before, id);
}

export async function reopenComplaint(unit: Unit, id: string, version: number, reason: string): Promise<Complaint> {
  const before = await writableComplaint(unit, id);
  if (!before.closedAt) throw problem('conflict', 'It is open.');
  await saveComplaint(unit, id, version, { closedAt: null, closedBy: null, closingNote: null });
  return finish(unit, `opened again: ${reason}`, before, id);
}

type Answer = { answer: 'given' | 'refused'; note: string | null };

/** What follows from a consent given. */
function carryOut(unit: Unit, complaint: StoredComplaint, consent: StoredComplaint['consents'][number]) {
  if (consent.kind === 'unflag') return { safety: false, safetySeenAt: null, safetySeenBy: null };
  requireClosable({ ...complaint, consents: complaint.consents.filter(({ id }) => id !== consent.id) });
  return { closedAt: unit.at, closedBy: consent.askedById, closingNote: consent.reason };
}

export async function answerConsent(
  unit: Unit,
  id: string,
  consentId: string,
  version: number,
  { answer, note }: Answer,
): Promise<Complaint> {
  const before = await openComplaint(unit, id);
  const consent = before.consents.find((it) => it.id === consentId);
  if (!consent) throw notFound('consent');
  if (consent.answer !== null) throw problem('conflict', 'It was answered already.');
  if (!mayConsent(unit.actor, before.plantId, consent.askedById, await safetyPersonOf(unit.tx, before.plantId)))
    throw problem(
      'not_allowed',
      'The consent is another person’s than who asked for it: the one responsible for product safety, or a manager of the plant.',
    );
  const change = answer === 'given' ? carryOut(unit, before, consent) : {};
  await saveComplaint(unit, id, version, change);
  await unit.tx.complaintConsent.update({
    where: { id: consentId },
    data: { answer, note, answeredBy: unit.actor.id, answeredAt: unit.at },
  });
  await tellConsentAnswered(unit, before, consent, answer);
  return finish(unit, `consent ${answer}`, before, id);
}
