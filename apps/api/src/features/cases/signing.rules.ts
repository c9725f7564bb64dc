/** Who may sign, in whose name: pure. */
import type { Discipline, SignRole } from '#contracts/case-parts.ts';
import { rolesFor } from './needs.rules.ts';

export interface Signing {
  discipline: Discipline;
  role: SignRole;
  signerId: string;
  safety: boolean;
  /** who answers for product safety at the plant */
  safetyPersonId: string | null;
  /** signatures of this discipline that hold */
  present: readonly { role: SignRole; signedBy: string }[];
}
export type Refusal = 'no_such_role' | 'signed_already' | 'no_safety_person' | 'not_safety_person' | 'alone';

/**
 * Null where the signature is right. In a safety-relevant case nobody signs the closure both for quality and for the plant's
 * management, so that at least two people close it and its author never does so alone.
 */
export function refusalOf(signing: Signing): Refusal | null {
  const { discipline, role, signerId, safety, safetyPersonId, present } = signing;
  if (!rolesFor(discipline, safety).includes(role)) return 'no_such_role';
  if (present.some((it) => it.role === role)) return 'signed_already';
  if (role === 'product_safety') {
    if (safetyPersonId === null) return 'no_safety_person';
    if (safetyPersonId !== signerId) return 'not_safety_person';
  }
  const byMe = present.some((it) => it.role !== 'product_safety' && it.signedBy === signerId);
  if (discipline === 8 && safety && role !== 'product_safety' && byMe) return 'alone';
  return null;
}
