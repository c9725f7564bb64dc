/** Who may give the second word on a safety-relevant complaint, and what keeps a complaint open. Procedure of our own. */
import { type Actor, holds } from '#api/platform/actor.ts';
import type { Complaint } from '#contracts/complaints.ts';
import type { StoredComplaint } from './complaint.queries.ts';

type Person = { id: string } | null;

/** The person responsible for product safety, or a manager of the plant; never who asked, and never a machine. */
export const mayConsent = (actor: Actor, plantId: string, askedBy: string, safetyPerson: Person): boolean =>
  actor.kind === 'person' &&
  actor.id !== askedBy &&
  (actor.id === safetyPerson?.id || holds(actor, 'complaints.consent', plantId));

/** The person responsible acknowledges; a manager does where nobody is named. */
export const maySeeSafety = (
  actor: Actor,
  complaint: Pick<StoredComplaint, 'plantId' | 'safety' | 'safetySeenAt'>,
  safetyPerson: Person,
): boolean =>
  complaint.safety &&
  complaint.safetySeenAt === null &&
  actor.kind === 'person' &&
  (safetyPerson ? actor.id === safetyPerson.id : holds(actor, 'complaints.consent', complaint.plantId));

export function closingBlocksOf({
  clocks,
  safety,
  safetySeenAt,
  consents,
  closedAt,
}: Pick<StoredComplaint, 'clocks' | 'safety' | 'safetySeenAt' | 'consents' | 'closedAt'>): Complaint['blocks'] {
  if (closedAt) return [];
  return [
    ...(clocks.some((clock) => !clock.answeredAt && !clock.pausedAt) ? (['clock_running'] as const) : []),
    ...(safety && !safetySeenAt ? (['safety_unseen'] as const) : []),
    ...(consents.some(({ answer }) => answer === null) ? (['consent_waiting'] as const) : []),
  ];
}
