import type { Combination } from '#analysis/signals/find-signals.ts';
import { keyOf, type Member } from './members.ts';

/** A combination that could be a signal. */
export interface Candidate extends Combination {
  member: Member;
  basis: 'exposure' | 'share';
  /** members that share, where production says nothing */
  peers: number | null;
}

export const candidate = (
  dimension: string,
  member: Member,
  observed: number,
  expected: number,
  basis: Candidate['basis'],
  peers: number | null,
): Candidate => ({ key: keyOf(member), dimension, member, observed, expected, basis, peers });
