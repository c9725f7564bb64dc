import type { ActionState } from '#contracts/actions.ts';

export type Move = Exclude<ActionState, 'verified'>;

/** Where an action may go from each state without a verification. */
const moves: Readonly<Record<ActionState, readonly Move[]>> = {
  agreed: ['under_way', 'held_up', 'carried_out', 'given_up'],
  under_way: ['agreed', 'held_up', 'carried_out', 'given_up'],
  held_up: ['under_way', 'carried_out', 'given_up'],
  carried_out: ['under_way'],
  verified: ['under_way'],
  given_up: ['agreed', 'under_way'],
};

/** Nothing stands still, ends or begins anew without a reason. */
export const needsReason = (from: ActionState, to: Move): boolean =>
  to === 'held_up' || to === 'given_up' || from === 'carried_out' || from === 'verified' || from === 'given_up';

export const mayMove = (from: ActionState, to: Move): boolean => moves[from].includes(to);

/** States in which what was agreed may still be changed. */
export const isChangeable = (state: ActionState): boolean =>
  state === 'agreed' || state === 'under_way' || state === 'held_up';

export const reopens = (from: ActionState): boolean => from === 'verified' || from === 'given_up';

/** An action's number for people, such as `LIS-A26-0042`. */
export const actionNumber = (plantCode: string, year: number, running: number): string =>
  `${plantCode}-A${String(year % 100).padStart(2, '0')}-${String(running).padStart(4, '0')}`;
