import { safetyPersonOf } from '#api/features/plant-calendar/product-safety.service.ts';
import { newId } from '#api/platform/ids.ts';
import { problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { Complaint } from '#contracts/complaints.ts';
import type { StoredComplaint } from './complaint.queries.ts';
import { maySeeSafety } from './consent.rules.ts';
import { finish, saveComplaint } from './finish.ts';
import { openComplaint } from './open-complaint.service.ts';
import { tellConsentAsked, tellSafety } from './telling.service.ts';

export async function flagSafety(unit: Unit, id: string, version: number): Promise<Complaint> {
  const before = await openComplaint(unit, id);
  if (before.safety) throw problem('conflict', 'It is flagged as safety-relevant already.');
  await saveComplaint(unit, id, version, { safety: true, safetySeenAt: null, safetySeenBy: null });
  await tellSafety(unit, before);
  return finish(unit, 'flagged as safety-relevant', before, id);
}

export async function acknowledgeSafety(unit: Unit, id: string, version: number): Promise<Complaint> {
  const before = await openComplaint(unit, id);
  if (!before.safety || before.safetySeenAt)
    throw problem(
      'conflict',
      'There is nothing to acknowledge: it is not safety-relevant, or it was acknowledged already.',
    );
  if (!maySeeSafety(unit.actor, before, await safetyPersonOf(unit.tx, before.plantId)))
    throw problem(
      'not_allowed',
      'Only the person responsible for product safety at the plant acknowledges it; where nobody is named, a manager.',
    );
  await saveComplaint(unit, id, version, { safetySeenAt: unit.at, safetySeenBy: unit.actor.id });
  return finish(unit, 'safety acknowledged', before, id);
}

/** Asks for a second person's word; one at a time for each purpose. */
export async function askConsent(
  unit: Unit,
  complaint: StoredComplaint,
  kind: 'close' | 'unflag',
  reason: string,
): Promise<void> {
  if (complaint.consents.some((consent) => consent.kind === kind && consent.answer === null))
    throw problem('conflict', 'Consent was asked for already and waits for an answer.');
  const consentId = newId();
  await unit.tx.complaintConsent.create({
    data: {
      id: consentId,
      plantId: complaint.plantId,
      complaintId: complaint.id,
      kind,
      reason,
      askedBy: unit.actor.id,
      askedAt: unit.at,
    },
  });
  await tellConsentAsked(unit, complaint, consentId, reason);
}

export async function askUnflag(unit: Unit, id: string, version: number, reason: string): Promise<Complaint> {
  const before = await openComplaint(unit, id);
  if (!before.safety) throw problem('conflict', 'It is not flagged as safety-relevant.');
  await saveComplaint(unit, id, version, {});
  await askConsent(unit, before, 'unflag', reason);
  return finish(unit, 'unflagging asked for', before, id);
}
